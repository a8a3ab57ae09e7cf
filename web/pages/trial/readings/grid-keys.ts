/** Where the arrow keys lead from a cell, among the rows that are shown; undefined where the key is the field’s own. */
export function leadsTo(
  key: string,
  field: HTMLInputElement,
  { rows, columns }: { rows: readonly number[]; columns: number },
): { row: number; column: number } | undefined {
  const row = Number(field.dataset.row)
  const column = Number(field.dataset.column)
  const at = rows.indexOf(row)
  const to = (place: number, toColumn: number) => {
    const next = rows[place]
    return next === undefined || toColumn < 0 || toColumn >= columns
      ? undefined
      : { row: next, column: toColumn }
  }
  const start = field.selectionStart ?? 0
  const end = field.selectionEnd ?? 0
  const whole = start === 0 && end === field.value.length
  switch (key) {
    case 'ArrowUp':
      return to(at - 1, column)
    case 'ArrowDown':
    case 'Enter':
      return to(at + 1, column)
    // Within a text the arrow moves the caret; at its end, or with all of it chosen, it moves on.
    case 'ArrowLeft':
      return whole || end === 0 ? to(at, column - 1) : undefined
    case 'ArrowRight':
      return whole || start === field.value.length ? to(at, column + 1) : undefined
    default:
      return undefined
  }
}
