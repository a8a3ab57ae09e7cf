import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fitModel } from '#api/science/statistics/model.ts'
import type { ModelRow, ModelSpec } from '#api/science/statistics/model-spec.ts'

// biome-ignore lint/suspicious/noExplicitAny: a test reads whatever comes back
const modelled = (spec: ModelSpec, rows: readonly ModelRow[]): any => fitModel(spec, rows)

const noise = [0.3, -0.1, 0.45, 0.02, -0.37, 0.21, 0.11, -0.29, 0.4, -0.05, 0.17, -0.22, 0.36, 0.08]
const value = (i: number) => 3 + noise[(i * 5 + 3) % noise.length]!
const rowsOf = (count: number, row: (i: number) => ModelRow) =>
  Array.from({ length: count }, (_, i) => row(i))

/** Every number in a reply, wherever it stands. */
function numbersIn(part: unknown): number[] {
  if (typeof part === 'number') return [part]
  if (part === null || typeof part !== 'object') return []
  return Object.values(part).flatMap(numbersIn)
}

/** The keys under which a reply has numbers. */
function keysIn(part: unknown, key: string): unknown[] {
  if (part === null || typeof part !== 'object') return []
  return Object.entries(part).flatMap(([name, it]) => (name === key ? [it] : keysIn(it, key)))
}

test('a treatment that is one pot throughout has no p-value anywhere', () => {
  const rows = rowsOf(12, (i) => ({ steam: (i % 3) * 10, pot: `P${i % 3}`, y: value(i) }))
  const reply = modelled(
    { response: 'y', factors: ['steam'], randomIntercepts: ['pot'], contrasts: 'pairwise' },
    rows,
  )
  expect(reply.method).toBe('reml')
  expect(reply.confounded).toEqual(['steam'])
  expect(reply.table).toEqual([{ term: 'steam', df1: 2, unavailable: expect.stringContaining('one pot') }])
  expect(reply.contrasts.steam[0]).toMatchObject({ a: '0', b: '10', unavailable: expect.any(String) })
  expect(keysIn(reply, 'p')).toEqual([])
  expect(keysIn(reply, 'se')).toEqual([])
  expect(reply.components).toEqual([{ group: 'pot', groups: 3, unavailable: expect.any(String) }])
})

test('what varies within such pots is judged all the same', () => {
  const rows = rowsOf(24, (i) => ({ steam: i % 3, fibre: Math.floor(i / 3) % 2, pot: i % 3, y: value(i) }))
  const reply = modelled(
    { response: 'y', factors: ['steam', 'fibre'], interactions: 'all', randomIntercepts: ['pot'] },
    rows,
  )
  expect(reply.confounded).toEqual(['steam'])
  expect(reply.table.map((it: { p?: number }) => it.p !== undefined)).toEqual([false, true, true])
  expect(reply.table[1].df2).toBe(18)
})

test('one pot for each combination: neither factor nor interaction can be judged', () => {
  const rows = rowsOf(24, (i) => ({ steam: i % 2, acid: Math.floor(i / 2) % 2, pot: i % 4, y: value(i) }))
  const reply = modelled(
    { response: 'y', factors: ['steam', 'acid'], interactions: 'all', randomIntercepts: ['pot'] },
    rows,
  )
  expect(reply.confounded).toEqual(['steam:acid'])
  expect(keysIn(reply, 'p')).toEqual([])
})

test('a random intercept with one row per group is left out, and the rows are the units', () => {
  const rows = rowsOf(12, (i) => ({ steam: i % 3, pot: i, y: value(i) }))
  const reply = modelled({ response: 'y', factors: ['steam'], randomIntercepts: ['pot'] }, rows)
  expect(reply.method).toBe('ols')
  expect(reply.cautions).toEqual([expect.stringContaining('one row per group')])
  expect(reply.residual.df).toBe(9)
})

test('vessels that are numbered anew in each session are told apart by the session', () => {
  const rows = rowsOf(24, (i) => ({
    session: i % 3,
    vessel: Math.floor(i / 3) % 4,
    steam: Math.floor(i / 3) % 2,
    y: value(i),
  }))
  const { components } = modelled(
    { response: 'y', factors: ['steam'], randomIntercepts: ['session', 'session:vessel'] },
    rows,
  )
  expect(components.map((it: { group: string; groups: number }) => [it.group, it.groups])).toEqual([
    ['session', 3],
    ['session:vessel', 12],
  ])
})

test('a random intercept of one group, and one that groups like another, are left out with a caution', () => {
  const rows = rowsOf(12, (i) => ({ a: i % 3, s: i % 4, v: 'x', one: 1, y: value(i) }))
  const reply = modelled({ response: 'y', factors: ['a'], randomIntercepts: ['s', 's:v', 'one'] }, rows)
  expect(reply.components).toHaveLength(1)
  expect(reply.cautions).toEqual(
    expect.arrayContaining([
      expect.stringContaining('same groups as s'),
      expect.stringContaining('one group only'),
    ]),
  )
})

test('where a variance is zero, a term has the df of the coarsest groups within which it does not vary', () => {
  // Pots differ less than skeins do: the same three skeins in each of nine pots, in three sessions of three pots.
  const skeins = [-0.5, 0, 0.5]
  const rows = rowsOf(27, (i) => {
    const pot = Math.floor(i / 3)
    return {
      session: Math.floor(pot / 3),
      pot: pot % 3,
      steam: pot % 3,
      fibre: i % 3,
      y: (pot % 3) + 0.1 * Math.floor(pot / 3) + skeins[(i + pot) % 3]!,
    }
  })
  const reply = modelled(
    { response: 'y', factors: ['steam', 'fibre'], randomIntercepts: ['session', 'session:pot'] },
    rows,
  )
  expect(reply.singular).toBe(true)
  // Steam: 9 pots less the rank of 3 steams and 3 sessions together. Fibre: 27 rows less 9 pots and 2 further columns.
  expect(reply.table.map((it: { term: string; df2: number }) => [it.term, it.df2])).toEqual([
    ['steam', 4],
    ['fibre', 16],
  ])
})

test('a copy of a factor is named, and the first of the two is judged as if alone', () => {
  const rows = rowsOf(12, (i) => ({ a: i % 3, b: `as ${i % 3}`, y: value(i) }))
  const reply = modelled(
    { response: 'y', factors: ['a', 'b'], meansOf: ['a', 'b'], contrasts: 'pairwise' },
    rows,
  )
  const alone = modelled({ response: 'y', factors: ['a'] }, rows)
  expect(reply.aliased).toEqual(['b'])
  expect(reply.coefficients.slice(3)).toEqual([
    { term: 'b=as 1', unavailable: expect.any(String) },
    { term: 'b=as 2', unavailable: expect.any(String) },
  ])
  expect(reply.table[0]).toEqual(alone.table[0])
  expect(reply.table[1]).toEqual({ term: 'b', unavailable: expect.any(String) })
  expect(reply.means.b).toEqual({ unavailable: expect.any(String) })
  expect(reply.means.a[0].se).toBeGreaterThan(0)
})

test('an empty cell is named, and takes with it what hangs on it', () => {
  const rows = rowsOf(24, (i) => ({ a: i % 2, b: Math.floor(i / 2) % 3, y: value(i) })).filter(
    ({ a, b }) => !(a === 1 && b === 2),
  )
  const spec = {
    response: 'y',
    factors: ['a', 'b'],
    interactions: 'all',
    meansOf: ['a', 'b', 'a:b'],
  } as const
  const reply = modelled({ ...spec, sumsOfSquares: 'III' }, rows)
  expect(reply.emptyCells).toEqual([{ a: '1', b: '2' }])
  expect(reply.aliased).toEqual(['a=1:b=2'])
  expect(reply.means.a.map((it: object) => 'unavailable' in it)).toEqual([false, true])
  expect(reply.means.b.map((it: object) => 'unavailable' in it)).toEqual([false, false, true])
  expect(reply.means['a:b'].map((it: object) => 'unavailable' in it)).toEqual([
    false,
    false,
    false,
    false,
    false,
    true,
  ])
  // No test weighs all cells equally where one has no rows; the interaction looks at the rest.
  expect(reply.table[0]).toMatchObject({ term: 'a', unavailable: expect.any(String) })
  expect(reply.table[1]).toMatchObject({ term: 'b', unavailable: expect.any(String) })
  expect(reply.table[2]).toMatchObject({ term: 'a:b', df: 1, p: expect.any(Number) })
  expect(modelled(spec, rows).table[0]).toMatchObject({ term: 'a', df: 1, p: expect.any(Number) })
})

test('an empty cell does no harm where there is no interaction', () => {
  const rows = rowsOf(24, (i) => ({ a: i % 2, b: Math.floor(i / 2) % 3, y: value(i) })).filter(
    ({ a, b }) => !(a === 1 && b === 2),
  )
  const reply = modelled({ response: 'y', factors: ['a', 'b'], meansOf: ['a', 'b'] }, rows)
  expect(reply.emptyCells).toEqual([])
  expect(keysIn(reply, 'unavailable')).toEqual([])
})

test.each<[string, ModelSpec, ModelRow[]]>([
  ['the same value throughout', { response: 'y', factors: ['a'] }, rowsOf(6, (i) => ({ a: i % 2, y: 3.3 }))],
  [
    'no spread within groups',
    { response: 'y', factors: ['a'] },
    rowsOf(6, (i) => ({ a: i % 2, y: 3.3 + 0.1 * (i % 2) })),
  ],
  [
    'as many coefficients as rows',
    { response: 'y', factors: ['a'] },
    rowsOf(3, (i) => ({ a: i, y: value(i) })),
  ],
  ['one row', { response: 'y', factors: ['a'] }, rowsOf(1, () => ({ a: 1, y: 2 }))],
  [
    'far too large',
    { response: 'y', factors: ['a'] },
    rowsOf(6, (i) => ({ a: i % 2, y: i % 3 ? 1e308 : -1e308 })),
  ],
  [
    'far too close',
    { response: 'y', factors: ['a'] },
    rowsOf(6, (i) => ({ a: i % 2, y: value(i) * 1e-200 })),
  ],
  [
    'a covariate far too large',
    { response: 'y', covariates: ['x'] },
    rowsOf(6, (i) => ({ x: 1e308 * (i % 2), y: value(i) })),
  ],
  [
    'a covariate far too close',
    { response: 'y', covariates: ['x'] },
    rowsOf(6, (i) => ({ x: 5e-324 * (i % 2), y: value(i) })),
  ],
  [
    'a product of covariates beyond all numbers',
    { response: 'y', covariates: ['u', 'v', 'w'], interactions: [['u', 'v', 'w']] },
    rowsOf(20, (i) => ({
      u: value(i) * 1e-140,
      v: value(i * 3) * 1e-140,
      w: value(i * 7) * 1e-140,
      y: value(i + 1),
    })),
  ],
  [
    'ten thousand levels',
    { response: 'y', factors: ['a'] },
    rowsOf(20_000, (i) => ({ a: i % 10_000, y: value(i) })),
  ],
  [
    'rows that are all alike within groups',
    { response: 'y', factors: ['a'], randomIntercepts: ['pot'] },
    rowsOf(12, (i) => ({ a: i % 2, pot: i % 4, y: 1.7 * (i % 4) })),
  ],
])('%s: a sentence in place of every p-value', (_, spec, rows) => {
  const reply = modelled({ ...spec, contrasts: 'pairwise' }, rows)
  expect(keysIn(reply, 'p')).toEqual([])
  expect(keysIn(reply, 'F')).toEqual([])
  expect(keysIn(reply, 'unavailable').length).toBeGreaterThan(0)
  for (const sentence of keysIn(reply, 'unavailable')) expect(sentence).toMatch(/^[\p{L}“].+[.?]$/u)
  expect(numbersIn(reply).every(Number.isFinite)).toBe(true)
})

test('a factor of one level has nothing to compare; its mean stands', () => {
  const reply = modelled(
    { response: 'y', factors: ['a'], contrasts: 'pairwise' },
    rowsOf(5, (i) => ({ a: 'x', y: value(i) })),
  )
  expect(reply.table).toEqual([{ term: 'a', unavailable: expect.stringContaining('one level') }])
  expect(reply.contrasts.a).toEqual({ unavailable: expect.stringContaining('one level') })
  expect(reply.means.a[0].se).toBeGreaterThan(0)
})

test('more than 64 levels are not compared with each other; their means stand', () => {
  const rows = rowsOf(130, (i) => ({ a: i % 65, y: value(i) }))
  const reply = modelled({ response: 'y', factors: ['a'], contrasts: 'pairwise' }, rows)
  expect(reply.contrasts.a).toEqual({ unavailable: expect.stringContaining('64') })
  expect(reply.means.a).toHaveLength(65)
})

test('whatever small table comes in, the reply has only finite numbers and p-values between 0 and 1', () => {
  const cell = fc.record({
    a: fc.constantFrom('x', 'y', 'z'),
    b: fc.constantFrom(1, 2),
    s: fc.constantFrom('m', 'n', 'o'),
    v: fc.integer({ min: 1, max: 3 }),
    x: fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ noNaN: true, noDefaultInfinity: true })),
    y: fc.oneof(fc.integer({ min: 0, max: 3 }), fc.double({ min: -50, max: 50, noNaN: true })),
  })
  const asked = fc.record({
    interactions: fc.constantFrom('none' as const, 'all' as const, [['a', 'x']]),
    randomIntercepts: fc.constantFrom<string[]>([], ['s'], ['s', 's:v'], ['s', 'v', 's:v']),
    sumsOfSquares: fc.constantFrom('II' as const, 'III' as const),
    contrasts: fc.constantFrom('pairwise' as const, 'reference' as const),
  })
  fc.assert(
    fc.property(fc.array(cell, { minLength: 1, maxLength: 25 }), asked, (rows, it) => {
      const reply = modelled(
        { response: 'y', factors: ['a', 'b'], covariates: ['x'], meansOf: ['a', 'a:b'], ...it },
        rows,
      )
      expect(numbersIn(reply).every(Number.isFinite)).toBe(true)
      for (const p of keysIn(reply, 'p')) {
        expect(p).toBeGreaterThanOrEqual(0)
        expect(p).toBeLessThanOrEqual(1)
      }
      for (const key of ['se', 'df', 'df2', 'sd'])
        for (const it of keysIn(reply, key)) expect(it).toBeGreaterThanOrEqual(0)
    }),
    { numRuns: 300, seed: 4 },
  )
})
