import { expect, test } from 'vitest'
import reference from '#test/reference/colour/palette-emd.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'
import { labOf } from '#test/support/lab-of.ts'

const palette = (colours: readonly { lab: readonly number[]; share: number }[]) =>
  colours.map(({ lab, share }) => ({ Lab: labOf(lab), share }))

// Solved as a linear programme by another program (the file's note).
test.each(reference.cases)('$name: $emd_de76 by ΔE76, $emd_de00 by ΔE00', async (one) => {
  const sides = { before: palette(one.before), after: palette(one.after) }
  const plain = await calculate('palette-distance', sides)
  expect(plain.status).toBe(200)
  expect(Math.abs(plain.body.distance - one.emd_de76)).toBeLessThanOrEqual(reference.tolerance)
  expect(plain.body.cautions).toEqual([])
  const moved = plain.body.flows.reduce((sum: number, { share }: { share: number }) => sum + share, 0)
  expect(moved).toBeCloseTo(1, 9)
  const perceived = await calculate('palette-distance', { ...sides, ground: 'dE00' })
  expect(Math.abs(perceived.body.distance - one.emd_de00)).toBeLessThanOrEqual(reference.tolerance)
  expect(perceived.body.cautions).toEqual([expect.stringContaining('not a metric')])
})

const grey = { L: 50, a: 0, b: 0 }
const still = [{ Lab: grey, share: 1 }]
const shares = (...of: number[]) => of.map((share) => ({ Lab: grey, share }))

test('shares that make 1 within 0.001 are scaled to 1', async () => {
  for (const before of [shares(0.999), shares(1.001), shares(0.5, 0.4995), shares(0.3334, 0.3333, 0.3333)]) {
    const { status, body } = await calculate('palette-distance', { before, after: still })
    expect(status).toBe(200)
    expect(body.flows.reduce((sum: number, { share }: { share: number }) => sum + share, 0)).toBeCloseTo(
      1,
      12,
    )
  }
})

test.each([
  [{ before: shares(0.998) }, '#/before'],
  [{ after: shares(0.7, 0.302) }, '#/after'],
  [{ after: [] }, '#/after'],
  [{ before: shares(1.5, -0.5) }, '#/before/1/share'],
  [{ before: [{ Lab: { ...grey, L: 101 }, share: 1 }] }, '#/before/0/Lab/L'],
  [{ before: [{ share: 1 }] }, '#/before/0/Lab'],
  [{ ground: 'dE94' }, '#/ground'],
  [{ before: new Array(257).fill({ Lab: grey, share: 1 / 257 }) }, '#/before'],
])('%# is refused', async (wrong, pointer) => {
  const { status, body } = await calculate('palette-distance', { before: still, after: still, ...wrong })
  expect(status).toBe(422)
  expect(body.errors.map((fault: { pointer: string }) => fault.pointer)).toContain(pointer)
})

test('as many colours as are taken', async () => {
  const many = (shift: number) =>
    Array.from({ length: 256 }, (_, i) => ({
      Lab: { L: 20 + (i % 16) * 4, a: ((i * 37) % 101) - 50 + shift, b: ((i * 53) % 97) - 48 },
      share: 1 / 256,
    }))
  // All moved alike by 3: no plan is cheaper than each by itself (the distance of the means is a lower bound).
  const { body } = await calculate('palette-distance', { before: many(0), after: many(3) })
  expect(body.distance).toBeCloseTo(3, 9)
})
