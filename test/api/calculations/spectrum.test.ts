import { describe, expect, test } from 'vitest'
import checks from '#test/reference/colour/spectra-checks.json' with { type: 'json' }
import strength from '#test/reference/colour/strength-exhaustion.json' with { type: 'json' }
import { calculate } from '#test/support/calculate.ts'

const viewings = [
  ['D65/10deg', 'D65', 10],
  ['D65/2deg', 'D65', 2],
  ['D50/2deg', 'D50', 2],
  ['A/10deg', 'A', 10],
] as const

// A second program agrees within 0.0042 ΔE76 (the file's note).
describe.each(checks.sets.map((set, i) => ({ title: `${set.range_nm.join('–')} nm, set ${i + 1}`, ...set })))(
  '$title',
  (set) => {
    const [first = 0, last = 0] = set.range_nm
    const wavelengths = Array.from({ length: (last - first) / set.step + 1 }, (_, i) => first + i * set.step)

    test.each(viewings)('%s', async (key, illuminant, observer) => {
      const reflectance = set.samples.map(({ R }) => R)
      const { status, body } = await calculate('spectrum', { wavelengths, reflectance, illuminant, observer })
      expect(status).toBe(200)
      for (const [i, { expected, name }] of set.samples.entries()) {
        const { XYZ, Lab } = body.results[i]
        for (const axis of [0, 1, 2] as const) expect(XYZ[axis]).toBeCloseTo(expected[key].XYZ[axis]!, 3)
        for (const [place, axis] of ['L', 'a', 'b'].entries())
          expect(Math.abs(Lab[axis] - expected[key].Lab[place]!), name).toBeLessThanOrEqual(
            checks.tolerance.Lab,
          )
      }
    })
  },
)

// Text-book identity (the file's note); a reflectance of 0 has none.
test('K/S of each wavelength', async () => {
  const reflectance = [...strength.ks.map(({ R }) => R), 0, 1]
  const wavelengths = reflectance.map((_, i) => 400 + 10 * i)
  const { body } = await calculate('spectrum', {
    wavelengths,
    reflectance: [reflectance],
    illuminant: 'D65',
    observer: 10,
  })
  const { ks } = body.results[0]
  for (const [i, { KS }] of strength.ks.entries()) expect(ks[i]).toBeCloseTo(KS, 5)
  expect(ks.slice(-2)).toEqual([{ unavailable: 'A reflectance of 0 has no K/S.' }, 0])
})

test('every 20 nm is taken too, and said', async () => {
  const body = {
    wavelengths: [400, 420, 440],
    reflectance: [[0.18, 0.18, 0.18]],
    illuminant: 'D65',
    observer: 10,
  }
  const answer = await calculate('spectrum', body)
  // The grey of the reference file: L* 49.4961.
  expect(answer.body.results[0].Lab.L).toBeCloseTo(49.4961, 4)
  expect(answer.body.method).toContain('20 nm')
})

const good = { wavelengths: [400, 410, 420], reflectance: [[0.1, 0.2, 0.3]], illuminant: 'D65', observer: 10 }

test.each([
  [{ wavelengths: [400, 405, 410] }, '#/wavelengths/1'],
  [{ wavelengths: [400, 410, 430] }, '#/wavelengths/2'],
  [{ wavelengths: [420, 410, 400] }, '#/wavelengths/1'],
  [{ wavelengths: [350, 360, 370] }, '#/wavelengths/0'],
  [{ wavelengths: [770, 780, 790] }, '#/wavelengths/2'],
  [{ wavelengths: [400] }, '#/wavelengths'],
  [{ wavelengths: ['400', 410, 420] }, '#/wavelengths/0'],
  [{ wavelengths: new Array(2_000_000).fill('x') }, '#/wavelengths'],
  [
    {
      reflectance: [
        [0.1, 0.2, 0.3],
        [0.1, 0.2],
      ],
    },
    '#/reflectance/1',
  ],
  [{ reflectance: [[0.1, 0.2, 1.1]] }, '#/reflectance/0/2'],
  [{ reflectance: [[0.1, -0.1, 1]] }, '#/reflectance/0/1'],
  [{ reflectance: [[0.1, null, 1]] }, '#/reflectance/0/1'],
  [{ reflectance: [new Array(2_000_000).fill('x')] }, '#/reflectance/0'],
  [{ reflectance: new Array(50_000).fill([0, 0, 'x']) }, '#/reflectance/0/2'],
  [{ illuminant: 'F11' }, '#/illuminant'],
  [{ observer: 5 }, '#/observer'],
  [{ observer: '10' }, '#/observer'],
  [{ illuminant: undefined }, '#/illuminant'],
])('%# is refused', async (wrong, pointer) => {
  const { status, body } = await calculate('spectrum', { ...good, ...wrong })
  expect(status).toBe(422)
  expect(body.errors[0].pointer).toBe(pointer)
  expect(body.errors.length).toBeLessThanOrEqual(200)
})
