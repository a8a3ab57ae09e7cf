import type { Column, TableCheck } from '#api/contract/table.ts'
import type { RowRead } from './row-values.ts'

/** What was read otherwise than it was written, or not at all: blanks and decimal commas. */
export function notesOf(reads: readonly RowRead[], columns: readonly Column[]): TableCheck['notes'] {
  const notes: { title: string; text: string }[] = []
  const blanks = reads.flatMap((read) =>
    read.blanks.map(({ column }) => ({ row: read.values.row, column, of: read.values })),
  )
  const single = blanks.filter(({ of }) => of.readings.length > 0 || of.outcomes.length > 0)
  for (const { row, column } of single.slice(0, 3)) {
    notes.push({
      title: `Row ${row}, ${columns[column]?.heading ?? ''}: blank`,
      text: 'Kept as not recorded, never as zero.',
    })
  }
  if (single.length > 3)
    notes.push({
      title: `${single.length - 3} more blank cells`,
      text: 'Each is kept as not recorded, never as zero.',
    })
  const commas = reads.flatMap((read) => read.commas)
  if (commas.length > 0) {
    const [first, second] = commas
    const read = (text: string) => text.replace(',', '.')
    const shown =
      second === undefined
        ? `${first} is read as ${read(first ?? '')}.`
        : `${first} and ${second} are read as ${read(first ?? '')} and ${read(second)}.`
    notes.push({ title: 'Commas', text: shown })
  }
  return notes
}
