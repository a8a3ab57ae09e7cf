import type { PlanGuard as Guard } from '#api/contract/plan.ts'
import { Button } from '#web/parts/button.tsx'
import { Note } from '#web/parts/note.tsx'

export type PlanGuardProps = {
  readonly guard: Guard
  readonly onTake: () => void
  readonly onKeep: () => void
}

/** Skeins that share a packet are not replicates: said before anything is dyed, with a bench that counts more. */
export function PlanGuard({ guard, onTake, onKeep }: PlanGuardProps) {
  return (
    <Note
      kind="guard"
      title={guard.title}
      buttons={
        guard.offer === null ? undefined : (
          <>
            <Button kind="do" onPress={onTake}>
              Plan it so
            </Button>
            <Button onPress={onKeep}>Keep mine</Button>
          </>
        )
      }
    >
      {guard.text.map((words) => (
        <p key={words}>{words}</p>
      ))}
    </Note>
  )
}
