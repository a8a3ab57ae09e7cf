import { column } from './columns.ts'
import { plainRecord } from './record-schemas.ts'

/** A dye as it was bought, in the dyer's own words. */
export const dye = plainRecord('Dye', {
  name: column.name(),
  class: column.choiceOr(
    ['levelling', 'fast acid', 'milling', 'super-milling', 'food-grade', 'unknown'],
    'unknown',
  ),
  form: column.choiceOr(['powder', 'liquid', 'gel'], 'powder'),
  batch: column.text(),
  gramsPerTeaspoon: column.maybeNumber({ moreThan: 0, max: 50 }),
})
