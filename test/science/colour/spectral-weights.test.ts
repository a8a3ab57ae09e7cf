import { describe, expect, test } from 'vitest'
import { spectralWeights } from '#api/science/colour/spectral-weights.ts'
import {
  type Illuminant,
  type Observer,
  tristimulusWeights,
} from '#api/science/colour/tristimulus-weights.ts'
import illuminants from '#test/reference/colour/cie-illuminants.json' with { type: 'json' }
import observers from '#test/reference/colour/cie-observers.json' with { type: 'json' }
import reference from '#test/reference/colour/tristimulus-weights-10nm.json' with { type: 'json' }

const viewings = (['A', 'D50', 'D65'] as const).flatMap((illuminant) =>
  ([2, 10] as const).map((observer) => ({
    illuminant,
    observer,
    key: `${illuminant}/${observer}deg` as const,
  })),
)

// Two implementations of ASTM E2022 agree on this table to 1e-12 (the file's note).
describe.each(viewings)('weights of $key', ({ illuminant, observer, key }) => {
  const weights = spectralWeights(reference.wavelength_nm, { illuminant, observer })

  test('are the reference’s, cell by cell', () => {
    expect([...weights.x]).toEqual(reference.weights[key].Wx)
    expect([...weights.y]).toEqual(reference.weights[key].Wy)
    expect([...weights.z]).toEqual(reference.weights[key].Wz)
  })

  test('make the white of CIE 015 and of ASTM E308', () => {
    const published = illuminants.white_points[key]
    weights.white.forEach((value, i) => {
      expect(Math.abs(value - published.ASTM_E308[i]!)).toBeLessThanOrEqual(0.015)
      expect(Math.abs(value - published.CIE_015_2018[i]!)).toBeLessThanOrEqual(0.02)
    })
  })

  // From the CIE's own 5 nm tables: E2022 on what they give when drawn out to 1 nm.
  test('follow from the CIE tables of observer and illuminant within 0.0015', () => {
    const derived = derive(illuminant, observer)
    for (const axis of ['x', 'y', 'z'] as const)
      for (const [i, value] of derived[axis].entries())
        expect(Math.abs(value - weights[axis][i]!)).toBeLessThan(0.0015)
  })

  test('keep their sum when an instrument reaches less far, 10 or 20 nm apart', () => {
    for (const wavelengths of [
      range(380, 730, 10),
      range(400, 700, 10),
      range(400, 700, 20),
      range(370, 770, 20),
    ]) {
      const folded = spectralWeights(wavelengths, { illuminant, observer })
      for (const [i, axis] of (['x', 'y', 'z'] as const).entries())
        expect(folded[axis].reduce((sum, value) => sum + value, 0)).toBeCloseTo(weights.white[i]!, 9)
      expect(folded.white).toEqual(weights.white)
    }
  })
})

test('what lies below 400 nm is added to the weight of 400 nm', () => {
  const whole = tristimulusWeights['D65/10'].x
  const folded = spectralWeights(range(400, 700, 10)).x
  expect(folded[0]).toBeCloseTo(whole[0]! + whole[1]! + whole[2]! + whole[3]! + whole[4]!, 12)
  expect(folded[1]).toBe(whole[5])
})

test.each([
  ['one wavelength', [400]],
  ['none', []],
  ['steps of 5', [400, 405, 410]],
  ['uneven steps', [400, 410, 430]],
  ['descending', [420, 410, 400]],
  ['below 360', [350, 360, 370]],
  ['above 780', [770, 780, 790]],
  ['not a number', [400, Number.NaN, 420]],
])('%s is refused', (_name, wavelengths) => {
  expect(() => spectralWeights(wavelengths)).toThrow(RangeError)
})

function range(first: number, last: number, step: number): number[] {
  return Array.from({ length: (last - first) / step + 1 }, (_, i) => first + i * step)
}

/** Lagrange's polynomial through a few points, at one place. */
function lagrange(xs: readonly number[], ys: readonly number[], x: number): number {
  return xs.reduce((sum, at, i) => {
    const share = xs.reduce(
      (product, other, j) => (i === j ? product : (product * (x - other)) / (at - other)),
      1,
    )
    return sum + share * ys[i]!
  }, 0)
}

function derive(illuminant: Illuminant, observer: Observer) {
  const nm = illuminants.step_5nm.wavelength_nm
  const power = illuminants.step_5nm[illuminant]
  const seen = observers.step_5nm.wavelength_nm
  const eye = observers.step_5nm[observer === 2 ? 'observer_2deg' : 'observer_10deg']
  const nodes = reference.wavelength_nm
  const sums = { x: nodes.map(() => 0), y: nodes.map(() => 0), z: nodes.map(() => 0) }
  for (let at = 360; at <= 780; at++) {
    const below = Math.min(nm.length - 2, Math.floor((at - nm[0]!) / 5))
    const along = (at - nm[below]!) / 5
    const light = power[below]! * (1 - along) + power[below + 1]! * along
    const from = Math.max(0, Math.min(seen.length - 6, Math.floor((at - 360) / 5) - 2))
    const node = Math.min(nodes.length - 2, Math.floor((at - 360) / 10))
    const near = [node - 1, node, node + 1, node + 2].filter((i) => i >= 0 && i < nodes.length)
    for (const axis of ['x', 'y', 'z'] as const) {
      const sight = lagrange(seen.slice(from, from + 6), eye[axis].slice(from, from + 6), at)
      for (const one of near) {
        const share = lagrange(
          near.map((i) => nodes[i]!),
          near.map((i) => (i === one ? 1 : 0)),
          at,
        )
        sums[axis][one]! += light * sight * share
      }
    }
  }
  const scale = 100 / sums.y.reduce((sum, value) => sum + value, 0)
  for (const axis of ['x', 'y', 'z'] as const) sums[axis] = sums[axis].map((value) => value * scale)
  return sums
}
