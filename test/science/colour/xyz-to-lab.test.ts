import fc from 'fast-check'
import { expect, test } from 'vitest'
import { labToXyz } from '#api/science/colour/lab-to-xyz.ts'
import { D50, D65 } from '#api/science/colour/white-points.ts'
import { xyzToLab } from '#api/science/colour/xyz-to-lab.ts'
import reference from '#test/reference/colour/srgb-bradford.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'

const triple = (values: readonly number[]) => [values[0]!, values[1]!, values[2]!] as const

// Two libraries agree on these within 5e-5 Lab (the file's note).
test.each(reference.pixels)('XYZ of $space $rgb8 is the printed Lab, under D65 and D50', (pixel) => {
  for (const [xyz, lab, white] of [
    [pixel.XYZ_D65, pixel.Lab_D65, D65],
    [pixel.XYZ_D50, pixel.Lab_D50, D50],
  ] as const) {
    const found = xyzToLab(triple(xyz), white)
    expect(found.L).toBeCloseTo(lab[0]!, 3)
    expect(Math.abs(found.a - lab[1]!)).toBeLessThanOrEqual(reference.tolerance.Lab)
    expect(Math.abs(found.b - lab[2]!)).toBeLessThanOrEqual(reference.tolerance.Lab)
  }
})

test('the white points are those of the reference file', () => {
  for (const i of [0, 1, 2]) {
    expect(D65[i]).toBeCloseTo(reference.whites.D65_XYZ[i]!, 9)
    expect(D50[i]).toBeCloseTo(reference.whites.D50_XYZ[i]!, 9)
  }
})

test('any colour goes to XYZ and back, the dark straight part and its far side included', () => {
  fc.assert(
    fc.property(anyLab(), (lab) => {
      const back = xyzToLab(labToXyz(lab, D65), D65)
      expect(back.L).toBeCloseTo(lab.L, 9)
      expect(back.a).toBeCloseTo(lab.a, 8)
      expect(back.b).toBeCloseTo(lab.b, 8)
    }),
  )
})
