import { expect, test } from 'vitest'
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
