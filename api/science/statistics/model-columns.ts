import type { ModelRow } from './model-spec.ts'

/** A column of labels: the levels in the order in which they are first met, and the level of each row. */
export type Coded = { readonly name: string; readonly levels: readonly string[]; readonly codes: Int32Array }

/**
 * The text of a value of a factor: the number 10 and the text "10" are one level.
 *
 * @example
 * levelText(10) // '10'
 */
export function levelText(value: unknown): string {
  return String(value)
}

/**
 * A factor's levels and codes from the rows.
 *
 * @example
 * codedColumn([{ steam: 30 }, { steam: '10' }, { steam: '30' }], 'steam').levels // ["30", "10"]
 */
export function codedColumn(rows: readonly ModelRow[], name: string): Coded {
  return coded(rows, name, (row) => levelText(row[name]))
}

/**
 * A column of numbers. The caller has seen to it that they are numbers.
 *
 * @example
 * Array.from(numberColumn([{ dE: 1.5 }, { dE: 2 }], 'dE')) // [1.5, 2]
 */
export function numberColumn(rows: readonly ModelRow[], name: string): Float64Array {
  return Float64Array.from(rows, (row) => Number(row[name]))
}

/**
 * The columns that make up a name such as `session:vessel`: the column of just that name if there is one, else the
 * parts between the colons, however the names of the columns are split by them. Nothing when a part is no column.
 *
 * @example
 * columnsNamed('session:vessel', (name) => name === 'session' || name === 'vessel') // ["session", "vessel"]
 */
export function columnsNamed(
  name: string,
  isColumn: (name: string) => boolean,
): readonly string[] | undefined {
  if (isColumn(name)) return [name]
  for (let at = name.indexOf(':'); at >= 0; at = name.indexOf(':', at + 1)) {
    const head = name.slice(0, at)
    if (!isColumn(head)) continue
    const rest = columnsNamed(name.slice(at + 1), isColumn)
    if (rest) return [head, ...rest]
  }
  return undefined
}

/**
 * The groups of a random intercept: a group is one combination of the columns that make up its name.
 *
 * @example
 * const rows = [{ session: 1, vessel: 1 }, { session: 2, vessel: 1 }]
 * groupColumn(rows, 'session:vessel', ['session', 'vessel']).levels.length // 2
 */
export function groupColumn(rows: readonly ModelRow[], name: string, columns: readonly string[]): Coded {
  if (columns.length === 1) return { ...codedColumn(rows, columns[0]!), name }
  return coded(rows, name, (row) => JSON.stringify(columns.map((column) => levelText(row[column]))))
}

function coded(rows: readonly ModelRow[], name: string, text: (row: ModelRow) => string): Coded {
  const places = new Map<string, number>()
  const codes = new Int32Array(rows.length)
  for (let i = 0; i < rows.length; i++) {
    const level = text(rows[i]!)
    let place = places.get(level)
    if (place === undefined) {
      place = places.size
      places.set(level, place)
    }
    codes[i] = place
  }
  return { name, levels: [...places.keys()], codes }
}
