import { describe, expect, test } from 'vitest'
import type { CellFault, NewTable } from '#api/contract/table.ts'
import { checkTable, presentCheck, rowsToKeep } from '#api/table/check-table.ts'
import { storyText } from '#test/support/a-ladder.ts'
import { cellsOf, changed, textOf } from '#test/support/a-table.ts'
import { mistypedLadder } from '#test/support/mistyped-ladder.ts'

const makes = { sessions: 0, vessels: 0, skeins: 0, readings: 0, outcomes: 0, levels: [] }
const between = { W2: 3 }

async function checked(table: Partial<NewTable>, given: Parameters<typeof checkTable>[1] = { factors: [] }) {
  const read = await checkTable({ keep: 'all', between, ...table }, given)
  return { ...presentCheck(read, makes), good: read.good, read }
}
const said = (faults: readonly CellFault[]) =>
  faults.map(({ row, heading, read, suggestion }) => ({ row, heading, read, suggestion }))

const ladder = () => cellsOf(storyText('steam-time-ladder.csv'))
describe('a table with mistakes', () => {
  test('names each at its cell, with what was probably meant', async () => {
    const { faults } = await checked({ text: mistypedLadder() })
    expect(said(faults)).toEqual([
      { row: 9, heading: 'L1', read: '460', suggestion: '46.0' },
      { row: 16, heading: 'rack_place', read: '4', suggestion: null },
      { row: 17, heading: 'rack_place', read: '4', suggestion: '5' },
      { row: 20, heading: 'stain_white_wool', read: '4/5', suggestion: '4-5' },
    ])
    expect(faults[0]).toMatchObject({
      title: 'Row 9, L* after: 460',
      detail: 'Outside 0–100. Did you mean 46.0?',
    })
    expect(faults[1]).toMatchObject({
      title: 'Rows 16 and 17 are one skein',
      detail: 'Both say session 3, place 4. No row is place 5.',
    })
  })

  test('counts rows that are ready, at fault and to be confirmed, which add up to all', async () => {
    expect(await checked({ text: mistypedLadder() })).toMatchObject({
      rows: 24,
      ready: 19,
      atFault: 4,
      doubtful: 1,
    })
  })

  test('says how blanks and commas were read', async () => {
    const { notes } = await checked({ text: mistypedLadder() })
    expect(notes).toEqual([
      { title: 'Row 15, felt: blank', text: 'Kept as not recorded, never as zero.' },
      { title: 'Commas', text: '49,6 and 57,0 are read as 49.6 and 57.0.' },
    ])
  })

  test('keeps a doubtful row among the ready ones only when its doubt was looked at', async () => {
    const rows = async (doubtsKept: NewTable['doubtsKept']) => {
      const { read } = await checked(
        doubtsKept === undefined ? { text: mistypedLadder() } : { text: mistypedLadder(), doubtsKept },
      )
      return rowsToKeep(read, 'ready').length
    }
    const rinses = ladder().headings.indexOf('rinses_to_4')
    expect(await rows(undefined)).toBe(19)
    expect(await rows([{ row: 12, column: 0 }])).toBe(19)
    expect(await rows([{ row: 12, column: rinses }])).toBe(20)
    expect(await rows(true)).toBe(20)
  })

  test('gives a mend in the decimals of its column, also where the sign was lost on the way', async () => {
    const { faults } = await checked({ text: 'skein,L,a,b\nA,40.12,-3.50,4.00\nB,4012,-3.10,4.20' })
    expect(said(faults)).toEqual([{ row: 2, heading: 'L', read: '4012', suggestion: '40.12' }])
  })

  test.each([
    ['03-Apr', '3-4'],
    ['4-Mar', '3-4'],
    ['01.02', '1-2'],
    ['2/1', '1-2'],
  ])('takes “%s” for the grade %s, of which a spreadsheet makes a date', async (typed, meant) => {
    const { faults } = await checked({ text: `skein\tstain wool\nA\t${typed}\nB\t4-5` })
    expect(faults.map(({ suggestion }) => suggestion)).toEqual([meant])
  })

  test.each(['2-4', '9', 'good', '12-May'])(
    'makes no suggestion for “%s”, which is no grade',
    async (typed) => {
      const { faults } = await checked({ text: `skein\tstain wool\nA\t${typed}\nB\t4-5` })
      expect(faults.map(({ suggestion }) => suggestion)).toEqual([null])
    },
  )

  test('of three rows that are one skein says so of all three', async () => {
    const { faults } = await checked({ text: 'skein,pH\nA,4\nA,4.1\nA,4.2' })
    expect(new Set(faults.map(({ title }) => title))).toEqual(new Set(['Rows 1, 2 and 3 are one skein']))
    expect(faults[0]?.detail).toBe('All are “A”.')
  })

  test('a hundred thousand rows that are one skein are said in a short sentence', async () => {
    const { faults, faultsInAll } = await checked({ text: `place,pH\n${'1,4\n'.repeat(100_000)}` })
    expect([faultsInAll, faults.length]).toEqual([100_000, 200])
    expect(faults[0]?.title).toBe('Rows 1, 2, 3, 4, 5, 6 and 99994 more are one skein')
  })

  test('so are fifty thousand skeins that are there twice', async () => {
    const rows = Array.from({ length: 100_000 }, (_, row) => `${Math.floor(row / 2)},4`)
    const { faultsInAll } = await checked({ text: `place,pH\n${rows.join('\n')}` })
    expect(faultsInAll).toBe(100_000)
  })

  test('a colour of which one number is missing is at fault, one of which all are missing is blank', async () => {
    const { faults, good } = await checked({ text: 'skein,L,a,b,pH\nA,40,,4,5\nB,,,,5' })
    expect(faults.map(({ title }) => title)).toEqual(['Row 1: a* missing'])
    expect(good.map((row) => row.readings)).toEqual([[]])
  })
})

describe('how a table is written', () => {
  test('semicolons and decimal commas give the same as commas and points', async () => {
    const points = await checked({ text: storyText('steam-time-ladder.csv') })
    const { headings, rows } = ladder()
    const commas = [headings, ...rows]
      .map((cells) => cells.map((cell) => cell.replace('.', ',')).join(';'))
      .join('\r\n')
    expect((await checked({ text: commas })).good.map(({ line: _, ...row }) => row)).toEqual(
      points.good.map(({ line: _, ...row }) => row),
    )
  })

  test('tabs, a byte order mark and empty lines give the same too', async () => {
    const points = await checked({ text: storyText('steam-time-ladder.csv') })
    const tabs = `\ufeff${storyText('steam-time-ladder.csv').replaceAll(',', '\t').replaceAll('\n', '\r\n\r\n')}`
    expect((await checked({ text: tabs })).good.map(({ line: _, ...row }) => row)).toEqual(
      points.good.map(({ line: _, ...row }) => row),
    )
  })

  test('a decimal comma in a file parted by commas is caught: the row has a cell too many', async () => {
    const { faults } = await checked({ text: 'skein,L,a,b\nA,40,1,2\nB,40,5,1,2' })
    expect(faults.map(({ row, title }) => [row, title])).toEqual([[2, 'Row 2: 5 cells under 4 headings']])
  })

  test.each([
    ['', 'There is nothing in it yet. Paste the rows with their headings.'],
    ['skein,L', 'There are headings but no rows under them.'],
    ['L,L\n1,2', 'The heading “L” is there twice. Give each column its own.'],
    ['skein,L\n"A,40', 'A quotation mark is opened and never closed.'],
  ])('refuses %j with a sentence', async (text, detail) => {
    await expect(checked({ text })).rejects.toMatchObject({ faults: [{ pointer: '#/text', detail }] })
  })

  test('one row more than 100,000 is refused', async () => {
    const text = `skein,pH\n${'A,4\n'.repeat(100_001)}`
    await expect(checked({ text })).rejects.toMatchObject({
      faults: [{ detail: 'One table may hold 100,000 rows. Send the rest in a second one.' }],
    })
  })

  test('what a spreadsheet would take for a formula is text, and no number', async () => {
    const { faults, good } = await checked({ text: 'skein,pH\n=1+1,4\n"=HYPERLINK(""x"")",=2+2' })
    expect(good.map((row) => row.skein)).toEqual(['=1+1'])
    expect(faults.map(({ row, detail }) => [row, detail])).toEqual([[2, 'This is not a number.']])
  })

  test('the apostrophe by which our own tables make a formula harmless is taken off again', async () => {
    expect((await checked({ text: "skein,pH\n'=1+1,4" })).good[0]?.skein).toBe('=1+1')
  })
})

describe('units in headings', () => {
  test.each([
    ['steam [h]', '0,5', 30],
    ['steam time (min)', '30', 30],
    ['steam (s)', '1800', 30],
  ])('under “%s” %s is %s minutes', async (heading, cell, minutes) => {
    const { good } = await checked({ text: `place;${heading};pH\n1;${cell};4` })
    expect(good[0]?.levels[0]?.value).toBeCloseTo(minutes, 9)
  })

  test('a weight in ounces is kept in grams', async () => {
    const { good } = await checked({ text: 'skein,weight [oz],pH\nA,1,4' })
    expect(good[0]?.massG).toBeCloseTo(28.3495, 4) // 1 oz = 28.3495 g
  })

  test('a unit that cannot be turned into the one of the variable is at fault', async () => {
    const { faults } = await checked({ text: 'place,steam [mL],pH\n1,30,4' })
    expect(faults).toHaveLength(1)
    expect(faults[0]).toMatchObject({ row: 1, heading: 'steam [mL]', suggestion: null })
  })

  test('the unit of the heading counts also where a map says what the column means', async () => {
    const { good } = await checked({
      text: 'place,heat [h],pH\n1,0.5,4',
      columns: [{ heading: 'heat [h]', as: 'level', factor: 'steamTime' }],
    })
    expect(good[0]?.levels[0]?.value).toBe(30)
  })
})

describe('long tables', () => {
  test('a column of washes makes one skein of many rows, each at its wear', async () => {
    const { faults, good } = await checked({
      text: 'skein,washes,L,a,b\nA,0,40,1,2\nA,1,41,1,2\nA,5,43,1,2\nB,0,40,1,2',
    })
    expect(faults).toEqual([])
    expect(good.map((row) => row.readings[0]?.wear)).toEqual([{}, { W2: 1 }, { W2: 5 }, {}])
  })

  test('the same washes of one skein twice are one row too many', async () => {
    const { faults } = await checked({ text: 'skein,washes,L,a,b\nA,1,40,1,2\nA,1,41,1,2' })
    expect(faults.map(({ row }) => row)).toEqual([1, 2])
  })

  test('how far the check is, is told as it goes', async () => {
    const seen: number[][] = []
    const text = `skein,pH\n${Array.from({ length: 5000 }, (_, i) => `${i},4`).join('\n')}`
    await checked({ text }, { factors: [], seen: (...at) => seen.push(at) })
    expect(seen).toEqual([
      [2000, 5000],
      [4000, 5000],
    ])
  })
})

describe('what has to be asked', () => {
  const asks = async (table: Partial<NewTable>) =>
    (await checked(table)).asks.map(({ key, needed }) => [key, needed])

  test('what lies between before and after is asked, never guessed', async () => {
    const { between: _, ...rest } = {
      between,
      text: storyText('steam-time-ladder.csv'),
      keep: 'all' as const,
    }
    const read = await checkTable(rest, { factors: [] })
    expect(read.asks.map(({ key, needed }) => [key, needed])).toContainEqual(['between', true])
  })

  test('the wear of a result that has no before is asked for', async () => {
    expect(await asks({ text: 'skein,dE00\nA,1.2' })).toContainEqual(['columns', true])
  })

  test('a row without anything measured is asked about: not done, or lost', async () => {
    expect(await asks({ text: 'skein,pH\nA,4\nB,' })).toContainEqual(['blankRows', true])
    expect(await asks({ text: 'skein,pH\nA,4\nB,', blankRows: 'not done' })).not.toContainEqual([
      'blankRows',
      true,
    ])
  })

  test('a heading of which nothing is known is said, and left out', async () => {
    const { columns } = await checked({ text: 'skein,pH,mood\nA,4,fine' })
    expect(columns.map(({ as }) => as)).toEqual(['skein', 'outcome', 'ignore'])
    expect(await asks({ text: 'skein,pH,mood\nA,4,fine' })).toContainEqual(['columns', false])
  })
})

describe('what the trial has already', () => {
  const known = (label: string, measured: boolean) => ({
    factors: [],
    taken: new Set(['1-1']),
    known: async () => new Map([['1-1', { code: '1-1', measured, given: [{ factor: 'steamTime', label }] }]]),
  })
  const text = 'session,place,steam,pH\n1,1,20,4'

  test('a row that says another level than was drawn for its place is asked about, and is no fault', async () => {
    const { faults, asks } = await checked({ text }, known('35', false))
    expect(faults).toEqual([])
    expect(asks).toContainEqual({
      key: 'otherOrder',
      question: 'One row says another level than was drawn. Was it done in another order than drawn?',
      needed: true,
    })
  })

  test('it is kept as the table says when the order was another', async () => {
    const { faults, asks, ready } = await checked({ text, otherOrder: true }, known('35', false))
    expect([faults, ready]).toEqual([[], 1])
    expect(asks.map(({ key }) => key)).not.toContain('otherOrder')
  })

  test('it is at fault when the order was as drawn, and nothing is suggested in its place', async () => {
    const { faults } = await checked({ text, otherOrder: false }, known('35', false))
    expect(said(faults)).toEqual([{ row: 1, heading: 'steam', read: '20', suggestion: null }])
  })

  test('a row that agrees with it is not', async () => {
    expect((await checked({ text }, known('20', false))).faults).toEqual([])
  })

  test('that a skein was measured before is said', async () => {
    const { notes } = await checked({ text }, known('20', true))
    expect(notes.map(({ title }) => title)).toEqual(['Skein 1-1 has readings'])
  })

  test('a changed table of a story says what was changed and nothing else', async () => {
    const table = changed(ladder(), (row) => (row.run === '4' ? { ...row, steam_min: '5000' } : row))
    const { faults } = await checked({ text: textOf(table) })
    expect(said(faults)).toEqual(
      [19, 20, 21, 22, 23, 24].map((row) => ({ row, heading: 'steam_min', read: '5000', suggestion: '50' })),
    )
  })
})
