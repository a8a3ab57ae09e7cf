import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type PaletteColour, paletteDistance } from '#api/science/colour/palette-distance.ts'
import reference from '#test/reference/colour/palette-emd.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

type Listed = { readonly lab: readonly number[]; readonly share: number }
const palette = (colours: readonly Listed[]): PaletteColour[] =>
  colours.map(({ lab, share }) => ({ lab: labOf(lab), share }))

// Solved as a linear programme by another program (the file's note).
describe('cases of the reference file', () => {
  test.each(reference.cases)('$name: $emd_de76 by ΔE76, $emd_de00 by ΔE00', (one) => {
    const [before, after] = [palette(one.before), palette(one.after)]
    const plain = paletteDistance(before, after)
    expect(Math.abs(plain.distance - one.emd_de76)).toBeLessThanOrEqual(reference.tolerance)
    const perceived = paletteDistance(before, after, { ground: 'dE00' })
    expect(Math.abs(perceived.distance - one.emd_de00)).toBeLessThanOrEqual(reference.tolerance)
  })
})

const anyPalette = fc.array(fc.record({ lab: anyLab(), share: fc.integer({ min: 1, max: 100 }) }), {
  minLength: 1,
  maxLength: 8,
})

test('flows take all of each colour before and make all of each colour after', () => {
  fc.assert(
    fc.property(anyPalette, anyPalette, (before, after) => {
      const { flows, distance } = paletteDistance(before, after)
      const total = (of: readonly PaletteColour[]) => of.reduce((sum, { share }) => sum + share, 0)
      before.forEach(({ share }, i) => {
        const leaves = flows.filter(({ from }) => from === i).reduce((sum, flow) => sum + flow.share, 0)
        expect(leaves).toBeCloseTo(share / total(before), 9)
      })
      after.forEach(({ share }, j) => {
        const arrives = flows.filter(({ to }) => to === j).reduce((sum, flow) => sum + flow.share, 0)
        expect(arrives).toBeCloseTo(share / total(after), 9)
      })
      expect(distance).toBeGreaterThanOrEqual(0)
    }),
  )
})

test('by ΔE76 it is a metric: nothing to itself, the same both ways, no detour shorter', () => {
  fc.assert(
    fc.property(anyPalette, anyPalette, anyPalette, (one, two, three) => {
      const between = (from: PaletteColour[], to: PaletteColour[]) => paletteDistance(from, to).distance
      expect(between(one, one)).toBeCloseTo(0, 9)
      expect(between(one, two)).toBeCloseTo(between(two, one), 7)
      expect(between(one, three)).toBeLessThanOrEqual(between(one, two) + between(two, three) + 1e-7)
    }),
  )
})

test('a colour without a share moves nothing; a side without any is refused', () => {
  const grey = { L: 50, a: 0, b: 0 }
  const still = [{ lab: grey, share: 1 }]
  expect(
    paletteDistance(still, [
      { lab: { L: 90, a: 0, b: 0 }, share: 0 },
      { lab: grey, share: 1 },
    ]),
  ).toEqual({
    distance: 0,
    flows: [{ from: 0, to: 1, share: 1 }],
  })
  expect(() => paletteDistance([], still)).toThrow(RangeError)
  expect(() => paletteDistance(still, [{ lab: grey, share: 0 }])).toThrow(RangeError)
  expect(() =>
    paletteDistance(
      [
        { lab: grey, share: 2 },
        { lab: grey, share: -1 },
      ],
      still,
    ),
  ).toThrow(RangeError)
})
