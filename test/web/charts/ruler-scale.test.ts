import { expect, test } from 'vitest'
import { rulerScale } from '#web/charts/ruler-scale.ts'

const step = (lower: number, upper: number) => ({ role: 'step', lower, upper })
// The steps of the worked steam ladder, 50 down to 0 minutes, with their 90 % intervals.
const steps = [step(-0.73, 0.77), step(-0.47, 0.5), step(0.73, 1.9), step(3.4, 4.91), step(9.73, 10.52)]

test('what lies far beyond the margin does not press the others together', () => {
  const { place } = rulerScale(steps, 1)
  expect(place(1.9)).toBeLessThan(98)
  expect(place(3.4)).toBeGreaterThan(92)
  expect(place(-0.73)).toBeGreaterThan(2)
})

test('nought and the margin are always named, and no name stands on another', () => {
  const { place, labels } = rulerScale(steps, 1)
  expect(labels.map(({ words }) => words)).toEqual(expect.arrayContaining(['0', 'margin 1.0']))
  const places = labels.map(({ at }) => place(at)).toSorted((one, other) => one - other)
  const gaps = places.slice(1).map((at, index) => at - (places[index] ?? 0))
  expect(Math.min(...gaps)).toBeGreaterThan(10)
})

test('a rule of which nothing is known yet still has its ruler', () => {
  const { place } = rulerScale([{ role: 'reference' }], 1)
  expect(place(1)).toBeGreaterThan(place(0))
})
