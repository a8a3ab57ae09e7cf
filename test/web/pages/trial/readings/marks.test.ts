import { describe, expect, test } from 'vitest'
import { checkTable, presentCheck } from '#api/table/check-table.ts'
import { mistypedLadder } from '#test/support/mistyped-ladder.ts'
import { faultNotes, markAt, marksOf } from '#web/pages/trial/readings/marks.ts'

const makes = { sessions: 0, vessels: 0, skeins: 0, readings: 0, outcomes: 0, levels: [] }
const check = presentCheck(
  await checkTable({ text: mistypedLadder(), between: { W2: 3 }, keep: 'all' }, { factors: [] }),
  makes,
)

describe('what the rows say', () => {
  test('two rows that are one skein are said once, with one mend', () => {
    expect(faultNotes(check).map(({ title, mend }) => [title, mend?.words])).toEqual([
      ['Row 9, L* after: 460', 'Make it 46.0'],
      ['Rows 16 and 17 are one skein', 'Row 17 is place 5'],
      ['Row 20, staining: 4/5', 'Make it 4-5'],
    ])
  })

  test('a mend goes to the cell that it mends', () => {
    const { headings } = { headings: check.columns.map(({ heading }) => heading) }
    expect(
      faultNotes(check).map(({ mend }) => [mend?.row, headings[mend?.column ?? -1], mend?.typed]),
    ).toEqual([
      [8, 'L1', '46.0'],
      [16, 'rack_place', '5'],
      [19, 'stain_white_wool', '4-5'],
    ])
  })

  test('rows and cells are marked as at fault or to be confirmed', () => {
    const marks = marksOf(check)
    expect([...marks.keys()].sort((a, b) => a - b)).toEqual([8, 11, 15, 16, 19])
    const L1 = check.columns.findIndex(({ heading }) => heading === 'L1')
    const rinses = check.columns.findIndex(({ heading }) => heading === 'rinses_to_4')
    expect([markAt(marks.get(8) ?? ''), markAt(marks.get(8) ?? '', L1)]).toEqual(['fault', 'fault'])
    expect(markAt(marks.get(8) ?? '', L1 - 1)).toBeUndefined()
    expect([markAt(marks.get(11) ?? ''), markAt(marks.get(11) ?? '', rinses)]).toEqual(['doubt', 'doubt'])
    expect(markAt('')).toBeUndefined()
  })
})
