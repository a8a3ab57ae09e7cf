import pg from 'pg'

type Read = (text: string) => unknown
type Parsers = NonNullable<pg.ClientConfig['types']>

/**
 * A whole number of any size that JavaScript holds exactly.
 *
 * @throws RangeError beyond ±(2⁵³ − 1): a rounded identifier or count would be a silent error.
 * @example
 * safeWhole('9007199254740991') // 9007199254740991
 */
export function safeWhole(text: string): number {
  const value = Number(text)
  if (!Number.isSafeInteger(value)) throw new RangeError(`${text} is too large to be read exactly`)
  return value
}

const asItStands: Read = (text) => text
// pg reads lists of text (1009), though the names of its types leave lists out.
const textList = pg.types.getTypeParser(1009 as number as 25) as Read

function listOf(read: Read): Read {
  return (text) => (textList(text) as (string | null)[]).map((item) => (item === null ? null : read(item)))
}

/**
 * How a value of each PostgreSQL type reaches JavaScript, by the type's number, where pg's own way would not do.
 * A day is text (as a Date it would be midnight somewhere, and a day is lost one way or the other); moments
 * (timestamptz) stay pg's Date; counts and sums are numbers.
 */
const readers = new Map<number, Read>([
  [20, safeWhole], // int8, and so count(*)
  [1016, listOf(safeWhole)],
  [1700, Number], // numeric, and so avg() of whole numbers
  [1231, listOf(Number)],
  [1082, asItStands], // date
  [1182, listOf(asItStands)],
  [1114, asItStands], // timestamp without a zone: which moment it is, nobody knows
  [1186, asItStands], // interval
])

/** Given to every pool, so that both databases give the same JavaScript values. */
export const valueTypes: Parsers = {
  // The signature is pg's own: it overloads by the format of the answer, of which we only ever ask for text.
  getTypeParser: ((oid: number, format?: 'text' | 'binary') =>
    readers.get(oid) ?? pg.types.getTypeParser(oid, format as 'text')) as Parsers['getTypeParser'],
}
