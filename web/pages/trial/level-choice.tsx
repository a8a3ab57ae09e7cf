import { Choice, Pick } from '#web/form/choice.tsx'

export type LevelChoiceProps = {
  /** What the second factor is called. */
  readonly factor: string
  readonly levels: readonly { readonly id: string; readonly label: string }[]
  readonly chosen: string
  readonly onChoose: (levelId: string) => void
}

/** Which level of the second factor is shown: few are all in sight, many in a list that opens. */
export function LevelChoice({ factor, levels, chosen, onChoose }: LevelChoiceProps) {
  const choice = {
    name: 'within',
    label: factor,
    options: levels.map(({ id, label }) => ({ value: id, words: label })),
    value: chosen,
    onChoose,
  }
  return levels.length > 4 ? <Choice {...choice} /> : <Pick {...choice} />
}
