import type { Column } from '#api/contract/table.ts'
import type { Factor } from '#api/contract/trial.ts'
import { Chevron } from '#web/form/field.tsx'
import { type Meaning, meaningGroups, meaningKey, meaningWords } from '#web/pages/trial/readings/meanings.ts'

export type ColumnHeadProps = {
  readonly column: Column
  readonly factors: readonly Factor[]
  /** Of the longest cell. */
  readonly characters: number
  readonly onMean: (column: Column) => void
}

/** The head of a column: the heading as it came, and below it what it means, to be changed. */
export function ColumnHead({ column, factors, characters, onMean }: ColumnHeadProps) {
  const now = meaningKey(column)
  const groups = meaningGroups(column.heading, factors)
  const isListed = groups.some(({ meanings }) => meanings.some((meaning) => meaningKey(meaning) === now))
  const all = isListed ? groups : [{ name: 'As it was read', meanings: [column] }, ...groups]
  const words = meaningWords(column, factors)

  const choose = (key: string): void => {
    const meaning = all.flatMap(({ meanings }) => meanings).find((it) => meaningKey(it) === key)
    if (meaning !== undefined) onMean(meant(column, meaning))
  }
  return (
    <th
      scope="col"
      class={column.as === 'ignore' ? 'paste-head paste-head-unused' : 'paste-head'}
      style={{ minWidth: `${Math.min(26, characters * 0.92) + 2.3}ch` }}
    >
      <span class="paste-heading" title={column.heading}>
        {column.heading === '' ? 'no heading' : column.heading}
      </span>
      <span class="paste-meaning">
        <span class="paste-meaning-words" aria-hidden="true">
          {words}
        </span>
        <Chevron />
        <select
          aria-label={`Meaning of ${column.heading === '' ? 'a column without a heading' : column.heading}`}
          value={now}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          {all.map(({ name, meanings }) => (
            <optgroup key={name} label={name}>
              {meanings.map((meaning) => (
                <option key={meaningKey(meaning)} value={meaningKey(meaning)}>
                  {meaningWords(meaning, factors)}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </span>
    </th>
  )
}

/** The unit stays with the heading; a wear stays as long as the column is a result. */
function meant({ heading, unit, wear, as }: Column, meaning: Meaning | Column): Column {
  return {
    ...meaning,
    heading,
    ...(unit === undefined ? {} : { unit }),
    ...(wear !== undefined && as === 'outcome' && meaning.as === 'outcome' ? { wear } : {}),
  }
}
