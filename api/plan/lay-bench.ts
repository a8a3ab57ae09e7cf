import { randomUUID } from 'node:crypto'
import type { PatternBench } from '#api/contract/patterns.ts'
import type { DrawPlaces } from '#api/contract/plan.ts'
import { isTimeLadder } from '#api/contract/time-ladder.ts'
import { drawPlaces, type StoodAt } from '#api/science/design/draw-places.ts'
import type { NewRow } from '#db/add-rows.ts'
import type { Stage } from '#db/tables.ts'
import type { FactorWithLevels, LevelRow } from '#db/trials.ts'
import { combinationKey } from './stood-at.ts'

/** Everything that a drawn bench writes, in the order in which it is written. */
export type LaidBench = {
  readonly session: NewRow<'session'>[]
  readonly vessel: NewRow<'vessel'>[]
  readonly skein: NewRow<'skein'>[]
  readonly placement: NewRow<'placement'>[]
  readonly treatment: NewRow<'treatment'>[]
}

export type BenchToLay = Pick<DrawPlaces, 'vesselsPerLevel' | 'skeinsPerVessel' | 'twins'> & {
  readonly trialId: string
  readonly seed: number
  /** Numbers of the sessions to draw: [1, 2, 3, 4], or [5, 6] when two are added. */
  readonly numbers: readonly number[]
  readonly factors: readonly FactorWithLevels[]
  readonly bench: PatternBench
  /** Where what was drawn earlier stands. */
  readonly before: readonly StoodAt[]
}

/**
 * Lays out the bench: in each session every level has its vessels (several factors: every combination), each with a
 * place and a turn drawn by lot, its skeins coded by session and place. On a ladder of times the turn follows from the
 * time (longest first in, all out together), so that none is drawn.
 */
export function layBench(plan: BenchToLay): LaidBench {
  const laid: LaidBench = { session: [], vessel: [], skein: [], placement: [], treatment: [] }
  const combinations = combinationsOf(plan.factors)
  const given = combinations.flatMap((levels) => {
    const ids = levels.map(({ id }) => id)
    return Array.from({ length: plan.vesselsPerLevel }, (_, beside) => ({
      levels,
      toPlace: { name: `${ids.join(' ')} ${beside}`, group: combinationKey(ids), levels: ids },
    }))
  })
  const vessels = given.map(({ toPlace }) => toPlace)
  const sessions = plan.numbers.map((number) => ({ session: String(number), vessels }))
  const drawn = drawPlaces(sessions, plan.seed, plan.before)
  const staggered = plan.factors.some(isTimeLadder)
  for (const [i, number] of plan.numbers.entries()) {
    const sessionId = randomUUID()
    laid.session.push({
      id: sessionId,
      trialId: plan.trialId,
      kind: plan.bench.sessionKind,
      label: sessionLabel(plan.bench, number),
    })
    const own = drawn.slice(i * given.length, (i + 1) * given.length)
    const placed = given
      .map(({ levels }, at) => ({
        levels,
        place: own[at]?.place ?? 0,
        order: staggered ? null : (own[at]?.order ?? 0),
      }))
      .sort((a, b) => a.place - b.place)
    for (const it of placed) layVessel(laid, plan, { ...it, number, sessionId })
  }
  return laid
}

export function sessionLabel({ session }: PatternBench, number: number): string {
  return `${session.one.charAt(0).toUpperCase()}${session.one.slice(1)} ${number}`
}

type Placed = {
  readonly number: number
  readonly sessionId: string
  readonly levels: readonly LevelRow[]
  readonly place: number
  readonly order: number | null
}

function layVessel(laid: LaidBench, plan: BenchToLay, { number, sessionId, levels, place, order }: Placed) {
  const code = `${number}-${place}`
  // Factors of several stages: the skeins of one packet came from one pot, each with its own filling.
  const stages = new Map<Stage, string>()
  for (const factor of plan.factors) if (!stages.has(factor.stage)) stages.set(factor.stage, randomUUID())
  for (const [stage, id] of stages) {
    laid.vessel.push({
      id,
      sessionId,
      stage,
      kind: plan.factors[0]?.stage === stage ? plan.bench.vesselKind : 'pot',
      label: code,
      place: String(place),
      drawnOrder: order,
    })
  }
  for (const [i, level] of levels.entries()) {
    const factor = plan.factors[i]
    const vesselId = factor && stages.get(factor.stage)
    if (factor && vesselId) laid.treatment.push({ factorId: factor.id, levelId: level.id, vesselId })
  }
  for (let skein = 0; skein < plan.skeinsPerVessel; skein++) {
    const id = randomUUID()
    const own = plan.skeinsPerVessel === 1 ? code : `${code}${letter(skein)}`
    laid.skein.push({ id, trialId: plan.trialId, code: own, role: 'treated' })
    for (const vesselId of stages.values()) laid.placement.push({ skeinId: id, vesselId })
    if (plan.twins && skein === 0 && levels[0]?.isReference)
      laid.skein.push({ trialId: plan.trialId, code: `${own} twin`, role: 'twin', cutFromId: id })
  }
}

/** Every combination of levels, one of each factor. */
export function combinationsOf(factors: readonly FactorWithLevels[]): LevelRow[][] {
  return factors.reduce<LevelRow[][]>(
    (before, { levels }) => before.flatMap((some) => levels.map((level) => [...some, level])),
    [[]],
  )
}

/** a, b … z, aa: codes of the skeins in one vessel. */
export function letter(place: number): string {
  const last = String.fromCharCode(97 + (place % 26))
  return place < 26 ? last : `${letter(Math.floor(place / 26) - 1)}${last}`
}
