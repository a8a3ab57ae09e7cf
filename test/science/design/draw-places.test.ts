import { expect, test } from 'vitest'
import { drawPlaces } from '#api/science/design/draw-places.ts'
import { randomise } from '#api/science/design/randomise.ts'
import { seededRandom } from '#api/science/design/seeded-random.ts'

const vessels = ['0', '10', '20', '35', '50', '75']
const session = (name: string) => ({ session: name, vessels })

test('every vessel gets a place and a turn of its own', () => {
  const drawn = drawPlaces([session('Mon'), session('Tue')], 7)
  expect(drawn).toHaveLength(12)
  for (const day of ['Mon', 'Tue']) {
    const own = drawn.filter((it) => it.session === day)
    expect(own.map((it) => it.place).sort()).toEqual([1, 2, 3, 4, 5, 6])
    expect(own.map((it) => it.order).sort()).toEqual([1, 2, 3, 4, 5, 6])
  }
})

test('the seed that is kept draws the same places again', () => {
  expect(drawPlaces([session('Mon')], 'a seed')).toEqual(drawPlaces([session('Mon')], 'a seed'))
})

test('a session that is added later leaves the drawn ones as they are', () => {
  const before = drawPlaces([session('Mon'), session('Tue')], 7)
  const after = drawPlaces([session('Mon'), session('Tue'), session('Wed')], 7)
  expect(after.slice(0, before.length)).toEqual(before)
})

test('places do not follow the level', () => {
  // 600 sessions: each of 6 vessels stands first about 100 times; chi-squared with 5 df passes 15.09 in 1 row of 100
  const first = new Map(vessels.map((vessel) => [vessel, 0]))
  for (let i = 0; i < 600; i++)
    for (const { vessel, place } of drawPlaces([session(`day ${i}`)], 7))
      if (place === 1) first.set(vessel, (first.get(vessel) ?? 0) + 1)
  const square = [...first.values()].reduce((sum, count) => sum + (count - 100) ** 2 / 100, 0)
  expect(square).toBeLessThan(15.09)
})

test('each of the six orders of three things comes up alike often', () => {
  const random = seededRandom(11)
  const counts = new Map<string, number>()
  for (let i = 0; i < 6000; i++) {
    const order = randomise(['a', 'b', 'c'], random).join('')
    counts.set(order, (counts.get(order) ?? 0) + 1)
  }
  expect(counts.size).toBe(6)
  const square = [...counts.values()].reduce((sum, count) => sum + (count - 1000) ** 2 / 1000, 0)
  expect(square).toBeLessThan(15.09)
})

test('one vessel cannot stand in two places', () => {
  expect(() => drawPlaces([{ session: 'Mon', vessels: ['a', 'a'] }], 1)).toThrow(RangeError)
})
