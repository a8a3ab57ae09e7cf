import { type PatternBench, type PatternFactor, patternPlan } from './patterns.ts'

type Stage = PatternFactor['stage']
type Vessel = Pick<PatternBench, 'vesselKind' | 'vessel' | 'shares'>

const of = (vesselKind: PatternBench['vesselKind'], one: string, shares: string): Vessel => ({
  vesselKind,
  vessel: { one, many: `${one}s` },
  shares,
})

const vessels: Readonly<Record<Stage, Vessel>> = {
  soak: of('bowl', 'bowl', 'soak'),
  dye: of('jar', 'jar', 'bath'),
  set: of('packet', 'packet', 'heat'),
  rinse: of('bowl', 'bowl', 'water'),
  dry: of('tray', 'tray', 'air'),
  wash: of('jar', 'jar', 'wash'),
  contact: of('tray', 'tray', 'moisture'),
  rub: of('tray', 'tray', 'rubbing'),
  light: of('card', 'card', 'place in the light'),
  remedy: of('jar', 'jar', 'bath'),
}

/**
 * The bench of a pattern, in the vessels of the stage at which its factor is given: two ways of steaming have packets,
 * two ways of dyeing jars. A factor of the pattern’s own stage keeps the pattern’s words.
 *
 * @example
 * [benchOfPattern('P4', 'set').vessel.many, benchOfPattern('P3', 'dye').vessel.many] // ['packets', 'lots']
 */
export function benchOfPattern(pattern: string, stage: Stage | undefined): PatternBench {
  const { bench, factor } = patternPlan(pattern)
  if (stage === undefined || bench.given === 'skein' || stage === factor.stage) return bench
  return { ...bench, ...vessels[stage] }
}
