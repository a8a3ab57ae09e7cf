import type { ComponentChildren } from 'preact'
import { Button } from '#web/parts/button.tsx'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Reading } from '#web/parts/reading.tsx'
import type { Loaded } from '#web/state/loaded.ts'

export type WhenLoadedProps<T> = {
  readonly loaded: Loaded<T>
  readonly children: (value: T) => ComponentChildren
}

/** The three states of something loaded: `<WhenLoaded loaded={trial}>{(trial) => <h1>{trial.question}</h1>}</WhenLoaded>` */
export function WhenLoaded<T>({ loaded, children }: WhenLoadedProps<T>) {
  if (loaded.kind === 'reading') return <Reading />
  if (loaded.kind === 'here') return <>{children(loaded.value)}</>
  return (
    <div class="stack">
      <ProblemNote refused={loaded.refused} />
      <div class="row">
        <Button onPress={loaded.again}>Try again</Button>
      </div>
    </div>
  )
}
