import fc from 'fast-check'
import { expect, test } from 'vitest'
import { spreadLabels } from '#api/science/pictures/spread-labels.ts'

const line = { from: 0, to: 100 }

test('labels that do not touch stay where they are', () => {
  expect(
    spreadLabels(
      [
        { at: 20, size: 10 },
        { at: 60, size: 10 },
      ],
      line,
    ),
  ).toEqual([20, 60])
})

test('two labels that touch move apart by the same amount', () => {
  expect(
    spreadLabels(
      [
        { at: 50, size: 10 },
        { at: 54, size: 10 },
      ],
      line,
    ),
  ).toEqual([47, 57])
})

test('places come back in the order in which they were asked for', () => {
  expect(
    spreadLabels(
      [
        { at: 54, size: 10 },
        { at: 50, size: 10 },
      ],
      line,
    ),
  ).toEqual([57, 47])
})

test('a label at the end of the line is kept inside it', () => {
  expect(spreadLabels([{ at: 99, size: 10 }], line)).toEqual([95])
})

test('a line too short for its labels is shared evenly', () => {
  expect(
    spreadLabels(
      [
        { at: 1, size: 60 },
        { at: 2, size: 60 },
      ],
      line,
    ),
  ).toEqual([25, 75])
})

test('no labels, no places', () => {
  expect(spreadLabels([], line)).toEqual([])
})

test('whatever is wished for, no two touch, none leaves the line, and their order is kept', () => {
  const wish = fc.record({ at: fc.integer({ min: -20, max: 120 }), size: fc.integer({ min: 1, max: 10 }) })
  fc.assert(
    fc.property(fc.array(wish, { minLength: 1, maxLength: 9 }), (wanted) => {
      const places = spreadLabels(wanted, line)
      const rows = wanted.map(({ at, size }, index) => ({ at, size, place: places[index] ?? Number.NaN }))
      rows.sort((one, other) => one.place - other.place)
      rows.forEach(({ at, size, place }, rank) => {
        expect(place - size / 2).toBeGreaterThanOrEqual(-1e-9)
        expect(place + size / 2).toBeLessThanOrEqual(100 + 1e-9)
        const next = rows[rank + 1]
        if (next === undefined) return
        expect(next.place - next.size / 2 - (place + size / 2)).toBeGreaterThanOrEqual(-1e-9)
        expect(next.at).toBeGreaterThanOrEqual(at)
      })
    }),
  )
})
