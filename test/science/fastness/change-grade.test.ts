import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { changeGrade } from '#api/science/fastness/change-grade.ts'
import greyScale from '#test/reference/colour/grey-scale.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

const { examples, tolerance, bands } = greyScale.a05_instrumental_change

// ISO 105-A05. The file marks the terms D, x, C_M, h_M and the factors 10 and 20 as from memory; the bands are
// midpoints of the verified A02 values. Every example was computed by two separately written programs.
describe('worked examples of the A05 formula', () => {
  test.each(examples)('$name: ΔE_F $dEF, rating $gsc, grade $band', (example) => {
    const graded = changeGrade(labOf(example.lab_original), labOf(example.lab_tested))
    expect(Math.abs(graded.difference - example.dEF)).toBeLessThanOrEqual(tolerance)
    expect(Math.abs(graded.rating - example.gsc)).toBeLessThanOrEqual(tolerance)
    expect(graded.grade).toBe(example.band)
  })
})

// Pairs of neutral greys have ΔE_F = ΔL*, so a band's edge can be walked up to.
const greysApart = (difference: number) =>
  changeGrade({ L: 40, a: 0, b: 0 }, { L: 40 + difference, a: 0, b: 0 })

test.each(bands)('the band of grade $grade starts where it says and ends before the next', (band) => {
  if (band.dEF_ge !== undefined) {
    expect(greysApart(band.dEF_ge).grade).toBe(band.grade)
    expect(greysApart(band.dEF_ge - 0.001).grade).not.toBe(band.grade)
  }
  if (band.dEF_lt !== undefined) {
    expect(greysApart(band.dEF_lt - 0.001).grade).toBe(band.grade)
    expect(greysApart(band.dEF_lt).grade).not.toBe(band.grade)
  }
})

// EN 20105-A02, clause 2.4, is for neutral pairs and CIE76: each printed value is the grade it belongs to.
test.each(greyScale.a02_change_in_colour.rows)('a grey $dE apart is the printed $grade', ({ dE, grade }) => {
  expect(greysApart(dE).grade).toBe(grade)
})

// Checks printed with the project's domain notes: ΔE_F and rating of three fades.
test.each([
  [[36.4, -14.6, -14.1], [36.9, -14.4, -13.8], 0.588, 4.65],
  [[45, 25, -7], [47, 22, -6], 3.241, 3.09],
  [[55, -38, -28], [58, -33, -25], 4.441, 2.61],
])('%j to %j: ΔE_F %d, rating %d', (before, after, difference, rating) => {
  const graded = changeGrade(labOf(before), labOf(after))
  expect(graded.difference).toBeCloseTo(difference, 3)
  expect(graded.rating).toBeCloseTo(rating, 2)
})

test('a grade is not the nearest half of its rating: 0.41 rates 4.76 and is a 4-5', () => {
  expect(greysApart(0.41).rating).toBeCloseTo(4.7588, 4)
  expect(greysApart(0.41).grade).toBe('4-5')
})

test('any two colours: a rating within 1–5, 5 and grade 5 for no change', () => {
  fc.assert(
    fc.property(anyLab(), anyLab(), (one, two) => {
      const { rating, difference } = changeGrade(one, two)
      expect(rating).toBeGreaterThanOrEqual(1)
      expect(rating).toBeLessThanOrEqual(5)
      expect(difference).toBeGreaterThanOrEqual(0)
      expect(changeGrade(one, one)).toEqual({ difference: 0, rating: 5, grade: '5' })
    }),
  )
})
