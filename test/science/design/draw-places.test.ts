import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type DrawnPlace, drawPlaces, type StoodAt } from '#api/science/design/draw-places.ts'
import { randomise } from '#api/science/design/randomise.ts'
import { seededRandom } from '#api/science/design/seeded-random.ts'

const vessels = ['0', '10', '20', '35', '50', '75'].map((name) => ({ name, group: name }))
const session = (name: string) => ({ session: name, vessels })

/** How often each group stood at each of the places 1 … n, by group. */
function timesAt(
  drawn: readonly DrawnPlace[],
  by: 'place' | 'order',
  groupOf: (vessel: string) => string,
  n: number,
) {
  const counts = new Map<string, number[]>()
  for (const it of drawn) {
    const own = counts.get(groupOf(it.vessel)) ?? Array.from({ length: n }, () => 0)
    own[it[by] - 1] = (own[it[by] - 1] ?? 0) + 1
    counts.set(groupOf(it.vessel), own)
  }
  return [...counts.values()]
}

const bench = (levels: number, copies: number) =>
  Array.from({ length: levels * copies }, (_, i) => ({
    name: `${i % levels}/${Math.floor(i / levels)}`,
    group: String(i % levels),
  }))
const levelOf = (vessel: string) => vessel.split('/')[0] ?? ''

test('over the sessions every level meets every place, and every turn, as evenly as can be', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 8 }),
      fc.integer({ min: 1, max: 8 }),
      fc.integer({ min: 1, max: 3 }),
      fc.integer({ min: 0, max: 99_999_999 }),
      (levels, sessions, copies, seed) => {
        const own = bench(levels, copies)
        const drawn = drawPlaces(
          Array.from({ length: sessions }, (_, i) => ({ session: String(i + 1), vessels: own })),
          seed,
        )
        for (const by of ['place', 'order'] as const) {
          const counts = timesAt(drawn, by, levelOf, own.length)
          expect(counts.length).toBe(levels)
          for (const times of counts) {
            expect(times.reduce((sum, it) => sum + it, 0)).toBe(sessions * copies)
            expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1)
          }
          for (let number = 1; number <= sessions; number++) {
            const here = drawn.filter((it) => it.session === String(number)).map((it) => it[by])
            expect(here.toSorted((a, b) => a - b)).toEqual(own.map((_, i) => i + 1))
          }
        }
      },
    ),
    { numRuns: 400 },
  )
})

test('sessions that are added later go on from what is there, and even it out', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 8 }), fc.integer({ min: 0, max: 99_999_999 }), (levels, seed) => {
      const own = bench(levels, 1)
      const three = [1, 2, 3].map((it) => ({ session: String(it), vessels: own }))
      const five = [4, 5, 6, 7, 8].map((it) => ({ session: String(it), vessels: own }))
      const first = drawPlaces(three, seed)
      const before: StoodAt[] = first.map((it) => ({ ...it, group: levelOf(it.vessel) }))
      const later = drawPlaces(five, seed, before)
      expect([...first, ...later]).toEqual(drawPlaces([...three, ...five], seed))
    }),
  )
})

test('what was drawn unevenly is evened out: a level that stood first three times is elsewhere next', () => {
  const own = bench(3, 1)
  const before = [1, 2, 3].flatMap(() =>
    own.map((it, i) => ({ group: it.group, place: i + 1, order: i + 1 })),
  )
  const drawn = drawPlaces(
    Array.from({ length: 6 }, (_, i) => ({ session: String(i + 4), vessels: own })),
    1,
    before,
  )
  for (const by of ['place', 'order'] as const)
    for (const [i, times] of timesAt(drawn, by, levelOf, 3).entries())
      expect(times.map((it, place) => it + (place === i ? 3 : 0))).toEqual([3, 3, 3])
})

test('two factors: each combination moves, and no level keeps to one place', () => {
  const own = ['steamed', 'not'].flatMap((heat) =>
    ['fawn', 'white'].map((base) => ({
      name: `${heat} ${base}`,
      group: `${heat} ${base}`,
      levels: [heat, base],
    })),
  )
  for (let seed = 0; seed < 50; seed++) {
    const drawn = drawPlaces(
      [
        { session: 'Mon', vessels: own },
        { session: 'Tue', vessels: own },
      ],
      seed,
    )
    for (const times of timesAt(drawn, 'place', (vessel) => vessel.split(' ')[1] ?? '', 4))
      expect(times).toEqual([1, 1, 1, 1])
  }
})

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
  // 600 trials of one session: each of 6 vessels stands first about 100 times; chi-squared with 5 df passes 15.09 in 1
  // of 100. The same for the second session of 600.
  for (const day of ['Mon', 'Tue']) {
    const first = new Map(vessels.map(({ name }) => [name, 0]))
    for (let seed = 0; seed < 600; seed++)
      for (const it of drawPlaces([session('Mon'), session('Tue')], `trial ${seed}`))
        if (it.place === 1 && it.session === day) first.set(it.vessel, (first.get(it.vessel) ?? 0) + 1)
    const square = [...first.values()].reduce((sum, count) => sum + (count - 100) ** 2 / 100, 0)
    expect(square).toBeLessThan(15.09)
  }
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
  const twice = ['a', 'a'].map((name) => ({ name, group: name }))
  expect(() => drawPlaces([{ session: 'Mon', vessels: twice }], 1)).toThrow(RangeError)
})
