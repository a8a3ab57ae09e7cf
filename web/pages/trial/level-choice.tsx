import { Choice, Pick } from '#web/form/choice.tsx'

export type LevelChoiceProps = {
  /** What the other factors are called. */
  readonly factor: string
  readonly levels: readonly { readonly id: string; readonly label: string }[]
  /** All of them together unless given. */
  readonly chosen: string | undefined
  readonly onChoose: (levelId: string | undefined) => void
}

/** Which part of a trial of more than one factor is shown, all together at first: few are all in sight, many in a list. */
export function LevelChoice({ factor, levels, chosen, onChoose }: LevelChoiceProps) {
  const choice = {
    name: 'within',
    label: factor,
    options: [
      { value: '', words: 'all together' },
      ...levels.map(({ id, label }) => ({ value: id, words: label })),
    ],
    value: chosen ?? '',
    onChoose: (value: string) => onChoose(value === '' ? undefined : value),
  }
  return levels.length > 4 ? <Choice {...choice} /> : <Pick {...choice} />
}
