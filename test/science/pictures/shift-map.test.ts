import { describe, expect, test } from 'vitest'
import { meanLab } from '#api/science/colour/mean-colour.ts'
import { arrowShape } from '#api/science/pictures/arrow-shape.ts'
import { planeOf } from '#api/science/pictures/shift-map-layout.ts'
import { shiftMap } from '#api/science/pictures/shift-map-marks.ts'
import type { ShiftPicture } from '#api/science/pictures/shift-picture.ts'
import { boxesOfText, outside, touching } from '#test/support/boxes-of-text.ts'
import { figureIn, storyRows } from '#test/support/story-rows.ts'

const steam: ShiftPicture = {
  title: 'Which way the colour went',
  says: '',
  finding: '',
  axisLabel: 'Steam',
  levels: [0, 10, 20, 35, 50, 75].map((minutes) => {
    const skeins = storyRows('steam-time-ladder.csv')
      .filter((row) => figureIn(row, 'steam_min') === minutes)
      .map((row) => ({
        code: `${row.run}-${row.rack_place}`,
        before: { L: figureIn(row, 'L0'), a: figureIn(row, 'a0'), b: figureIn(row, 'b0') },
        after: { L: figureIn(row, 'L1'), a: figureIn(row, 'a1'), b: figureIn(row, 'b1') },
      }))
    return {
      key: String(minutes),
      label: `${minutes} min`,
      short: String(minutes),
      chosen: minutes === 35,
      before: meanLab(skeins.map(({ before }) => before)),
      after: meanLab(skeins.map(({ after }) => after)),
      skeins,
    }
  }),
}
const wordsOf = (width: number): string[] =>
  boxesOfText(shiftMap(steam, { width }).marks).map(({ words }) => words)

// The changes of lightness, worked by hand from the file: +7.3, +4.2, +2.1, +0.9, +1.0 and +1.0.
test('the change of lightness stands under each level, with its sign', () => {
  expect(wordsOf(680)).toEqual(expect.arrayContaining(['+7.3', '+4.2', '+2.1', '+0.9', '+1.0']))
})

test('arrows too short to read are drawn again, larger, and it is said how much', () => {
  expect(wordsOf(680).filter((words) => words.endsWith('times larger'))).toHaveLength(1)
})

test('every level has its name on the map or in the inset', () => {
  const names = shiftMap(steam, { width: 680 }).marks.filter(
    (mark) => mark.kind === 'text' && mark.strong === true && mark.tone === 'grey-ink',
  )
  expect(names.map((mark) => ('words' in mark ? mark.words : '')).toSorted()).toEqual([
    '0 min',
    '10 min',
    '20 min',
    '35',
    '50',
    '75',
  ])
})

describe.each([288, 328, 440, 680])('at %i px', (width) => {
  const { marks, height } = shiftMap(steam, { width })

  test('no two labels touch and none leaves the drawing', () => {
    expect(touching(marks)).toEqual([])
    expect(outside(marks, width)).toEqual([])
  })

  test('nothing stands below the drawing', () => {
    for (const { box } of boxesOfText(marks)) expect(box.top + box.height).toBeLessThanOrEqual(height)
  })
})

test('a unit of a* is as long as a unit of b*, so that directions are true', () => {
  const { at } = planeOf(steam, { left: 0, top: 0, width: 340 })
  const [here, redder, yellower] = [at({ a: 0, b: 0 }), at({ a: 1, b: 0 }), at({ a: 0, b: 1 })]
  expect(redder.x - here.x).toBeCloseTo(here.y - yellower.y, 9)
  expect(redder.x).toBeGreaterThan(here.x)
})

test('a change that cannot be seen is no arrow', () => {
  expect(arrowShape({ x: 5, y: 5 }, { x: 5.5, y: 5 })).toEqual([])
})

test('a short arrow is all head, and ends where the colour ended', () => {
  const shape = arrowShape({ x: 0, y: 0 }, { x: 6, y: 0 })
  expect(shape).toHaveLength(3)
  expect(shape[1]).toEqual({ x: 6, y: 0 })
})

test('a map of no levels is an empty map', () => {
  expect(shiftMap({ ...steam, levels: [] }, { width: 680 }).marks.some((mark) => mark.kind === 'shape')).toBe(
    false,
  )
})
