import { type Grade, gradeNumber } from './grades.ts'

/** How one companion fibre came out of a wash, wet contact or rub. */
export type FibreStaining = { readonly fibre: string; readonly grade: Grade }

/**
 * The staining that stands in the headline: the worst of wool and nylon, the fibres that these dyes go for, and
 * beside it the worst of all companions. The headline is undefined when neither wool nor nylon was there: a cotton
 * that stayed clean says nothing about an acid dye.
 *
 * @throws RangeError without any companion
 *
 * @example
 * worstStaining([{ fibre: 'wool', grade: '4' }, { fibre: 'nylon', grade: '3-4' }, { fibre: 'cotton', grade: '3' }]) // { headline: { fibre: 'nylon', grade: '3-4' }, worst: { fibre: 'cotton', grade: '3' } }
 */
export function worstStaining(companions: readonly FibreStaining[]): {
  readonly headline: FibreStaining | undefined
  readonly worst: FibreStaining
} {
  const worst = worstOf(companions)
  if (worst === undefined) throw new RangeError('Staining needs at least one companion.')
  return { headline: worstOf(companions.filter(({ fibre }) => fibre === 'wool' || fibre === 'nylon')), worst }
}

/** The first of the lowest grades. */
function worstOf(companions: readonly FibreStaining[]): FibreStaining | undefined {
  let worst: FibreStaining | undefined
  for (const companion of companions) {
    if (worst === undefined || gradeNumber(companion.grade) < gradeNumber(worst.grade)) worst = companion
  }
  return worst
}
