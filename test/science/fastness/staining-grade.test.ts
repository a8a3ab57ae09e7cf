import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { stainingGrade } from '#api/science/fastness/staining-grade.ts'
import greyScale from '#test/reference/colour/grey-scale.json' with { type: 'json' }
import { anyLab } from '#test/support/any-lab.ts'
import { labOf } from '#test/support/lab-of.ts'

const { examples, tolerance } = greyScale.a04_instrumental_staining

// ISO 105-A04. Constants from memory, seen quoted elsewhere; the natural logarithm is confirmed by the visual scale.
describe('worked examples of the A04 formula', () => {
  test.each(examples)('$name: ΔE_GS $dEGS, rating $ssr, grade $band', (example) => {
    const graded = stainingGrade(labOf(example.lab_unstained), labOf(example.lab_stained))
    expect(Math.abs(graded.difference - example.dEGS)).toBeLessThanOrEqual(tolerance)
    expect(Math.abs(graded.rating - example.ssr)).toBeLessThanOrEqual(tolerance)
    expect(graded.grade).toBe(example.band)
  })
})

const greysApart = (difference: number) =>
  stainingGrade({ L: 90, a: 0, b: 0 }, { L: 90 - difference, a: 0, b: 0 })

// The file marks the A03 table as from memory; it and the formula give each other back within 0.02.
test.each(greyScale.a03_staining.rows)('a pair $dE apart is the scale’s $grade', ({ dE, grade }) => {
  expect(greysApart(dE).grade).toBe(grade)
})

test('a remembered set of some editions does not fit the formula: 6.8 rates 3.32, not 3.5', () => {
  expect(greysApart(6.8).rating).toBeCloseTo(3.32, 2)
})

test('the grade goes by the rating rounded to two decimals: 4.748 becomes 4.75 and is a 5', () => {
  const graded = greysApart((5 - 4.748) / 0.23)
  expect(graded.rating).toBeCloseTo(4.748, 9)
  expect(graded.grade).toBe('5')
  expect(greysApart((5 - 4.744) / 0.23).grade).toBe('4-5')
})

// Checks printed with the project's domain notes.
test.each([
  [[93, 0, 3], [85, -4, -3], 3.11],
  [[93, 0, 3], [91.5, 1.5, 1], 4.56],
])('%j stained to %j rates %d', (before, after, rating) => {
  expect(stainingGrade(labOf(before), labOf(after)).rating).toBeCloseTo(rating, 2)
})

test('any two colours: a rating within 1–5, 5 for no stain, the same both ways', () => {
  fc.assert(
    fc.property(anyLab(), anyLab(), (one, two) => {
      const graded = stainingGrade(one, two)
      expect(graded.rating).toBeGreaterThanOrEqual(1)
      expect(graded.rating).toBeLessThanOrEqual(5)
      expect(stainingGrade(two, one)).toEqual(graded)
      expect(stainingGrade(one, one)).toEqual({ difference: 0, rating: 5, grade: '5' })
    }),
  )
})
