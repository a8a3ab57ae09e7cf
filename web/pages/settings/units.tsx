import { useState } from 'preact/hooks'
import type { Setting } from '#api/contract/setting.ts'
import { keepSetting } from '#web/api/settings.ts'
import { Pick } from '#web/form/choice.tsx'
import { useKeeping } from '#web/pages/settings/use-keeping.ts'
import { ProblemNote } from '#web/parts/problem-note.tsx'
import { Section } from '#web/parts/section.tsx'

const systems = [
  { value: 'metric', words: 'Metric', help: 'g, mL, metric spoons and cups' },
  { value: 'us', words: 'US', help: 'oz, US cups, spoons, quarts' },
  { value: 'imperial', words: 'Imperial', help: 'oz, imperial fluid ounces and pints' },
] as const

export type SettingProps = {
  readonly settings: readonly Setting[]
  readonly onKept: () => void
}

/** Which measures stand first. */
export function Units({ settings, onKept }: SettingProps) {
  const keeping = useKeeping()
  const setting = settings.find(({ key }) => key === 'units')
  // What was chosen shows at once, while it is being kept.
  const [chosen, setChosen] = useState<string | undefined>()
  const value = chosen ?? (typeof setting?.value.system === 'string' ? setting.value.system : 'metric')
  const choose = async (system: string): Promise<void> => {
    setChosen(system)
    await keeping.keep(() => keepSetting({ key: 'units', version: setting?.version ?? 0 }, { system }))
    onKept()
  }
  return (
    <Section
      title="Units"
      says="These stand first wherever there is a choice; every other measure of the kitchen stays in reach. An amount is kept as you typed it."
    >
      <div class="stack">
        <ProblemNote refused={keeping.refused} />
        <Pick
          name="system"
          label="Measures"
          options={systems}
          value={value}
          onChoose={(system) => void choose(system)}
        />
        <p role="status" class="soft">
          {keeping.kept ? 'Kept.' : ''}
        </p>
      </div>
    </Section>
  )
}
