import { expect, test } from 'vitest'
import { ciede2000 } from '#api/science/colour/ciede2000.ts'
import { cielabDifference } from '#api/science/colour/cielab-difference.ts'
import { grades } from '#api/science/fastness/grades.ts'
import { changeSteps, stainingSteps } from '#api/science/fastness/grey-scale-steps.ts'
import reference from '#test/reference/colour/grey-scale.json' with { type: 'json' }

// A02 read from a public text of the standard; A03 marked in the file as from memory, in keeping with A04.
test.each([
  ['change in colour', changeSteps, reference.a02_change_in_colour.rows],
  ['staining', stainingSteps, reference.a03_staining.rows],
])('the scale for %s has the nine steps of the standard, with their tolerances', (_name, steps, rows) => {
  expect(steps).toEqual(
    rows.map(({ grade, dE, tol, tol_plus }) => ({ grade, dE76: dE, tolerance: tol ?? tol_plus })),
  )
  expect(steps.map(({ grade }) => grade)).toEqual(grades)
})

// The standard's first chip is a neutral grey of Y 12, L* about 41; some sources give its steps as ΔE00.
test('the steps are ΔE76: by ΔE00 the same greys are less apart', () => {
  const grey = { L: 41.22, a: 0, b: 0 }
  for (const { dE76 } of changeSteps.slice(1)) {
    const chip = { ...grey, L: grey.L + dE76 }
    expect(cielabDifference(grey, chip).dE76).toBeCloseTo(dE76, 10)
    expect(ciede2000(grey, chip)).toBeLessThan(dE76)
  }
})
