import { wearKey } from '#api/contract/wear.ts'
import { unitOfFactor } from '#api/science/design/unit-of-factor.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { ResultSeen, SkeinRecord } from '#db/trial-record.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Asked } from './asked.ts'
import type { Condition } from './condition.ts'
import type { JudgedTrial } from './judged-trial.ts'

/** One treated skein of a stratum with its result for one condition: what most questions are asked of. */
export type JudgedRow = {
  readonly levelId: string
  /** Session, card or parent: within which levels are compared. */
  readonly block: string
  /** What was given its level independently: rows of one unit are one. */
  readonly unit: string
  readonly vessel: string
  /** The dye vessel: yarn from one bath. */
  readonly lot: string | undefined
  readonly parent: string
  readonly skein: SkeinRecord
  /** Undefined: not recorded, or lost before it was. */
  readonly result: ResultSeen | undefined
  readonly value: number | undefined
  /** Why it was lost, when it was. A skein lost after its reading keeps that reading. */
  readonly lost: string | undefined
}

/** Roles whose skeins are given a level; twins, blanks and controls never are. */
const treated: ReadonlySet<string> = new Set(['treated', 'bled'])

/** The treated skeins of a stratum, each with its level; of a whole and its parts the measured stands for both. */
export function treatedSkeins({
  trial,
  factor,
  stratum,
}: Pick<Asked, 'trial' | 'factor' | 'stratum'>): { readonly skein: SkeinRecord; readonly level: LevelRow }[] {
  const { record, histories } = trial
  const levels = new Map(factor.levels.map((level) => [level.id, level]))
  const found = record.skeins.flatMap((skein) => {
    if (!treated.has(skein.role)) return []
    const level = levels.get(histories.levelOf(skein, factor) ?? '')
    if (!level) return []
    const inside = stratum.parts.every((part) => histories.levelOf(skein, part.factor) === part.level.id)
    return inside ? [{ skein, level }] : []
  })
  const measured = new Set(record.results.map((result) => result.skeinId))
  const ids = new Set(found.map(({ skein }) => skein.id))
  const cut = new Set(
    found.flatMap(({ skein: { cutFromId } }) =>
      cutFromId !== null && ids.has(cutFromId) ? [cutFromId] : [],
    ),
  )
  return found.filter(({ skein: { id, cutFromId } }) => {
    if (cutFromId !== null && ids.has(cutFromId)) return !measured.has(cutFromId)
    return measured.has(id) || !cut.has(id)
  })
}

/** The rows that a condition judges within its stratum. */
export function judgedRows(asked: Asked): JudgedRow[] {
  const { trial, factor, condition } = asked
  const { histories, record } = trial
  const values = resultsFor(trial, condition)
  const stays = treatedSkeins(asked).map(({ skein, level }) => {
    const all = histories.stays(skein)
    const at = histories.stayAt(skein, factor.stage) ?? all[0]
    const later = all
      .filter((stay) => stay !== at && stay.vessel.id !== at?.vessel.id)
      .map((stay) => stay.vessel.id)
    const vessel = at?.vessel.id ?? skein.id
    return { skein, level, at, later, vessel, session: at?.vessel.sessionId ?? '' }
  })
  // Counted as one only where a result says something of it: a jar that nobody read joins nothing.
  const read = stays.filter(({ skein }) => values.has(skein.id))
  const units = unitOfFactor(
    read.map(({ skein, level, vessel, session, later }) => ({
      level: level.id,
      session,
      vessel,
      parent: skein.cutFromId ?? undefined,
      skein: skein.id,
      later,
    })),
  )
  const unitOf = new Map(read.map(({ skein }, place) => [skein.id, units.unitOf[place] ?? skein.id]))
  return stays.map(({ skein, level, at, vessel, session }): JudgedRow => {
    const result = values.get(skein.id)
    const parent = skein.cutFromId ?? skein.id
    return {
      levelId: level.id,
      block: blockOf(record.trial.block, { session, vessel, parent }),
      unit: unitOf.get(skein.id) ?? vessel,
      vessel,
      lot: histories.stayAt(skein, 'dye')?.vessel.id,
      parent,
      skein,
      result,
      value: result?.value,
      lost:
        skein.status === 'lost'
          ? (skein.lostReason ?? 'no reason given')
          : at?.vessel.status === 'lost'
            ? (at.vessel.lostReason ?? 'no reason given')
            : undefined,
    }
  })
}

function blockOf(
  block: 'session' | 'vessel' | 'parent',
  { session, vessel, parent }: { session: string; vessel: string; parent: string },
): string {
  if (block === 'vessel') return JSON.stringify([session, vessel])
  return block === 'parent' ? parent : session
}

/** What was set before any wear, and is found whatever wear a rule names. */
const beforeWear: ReadonlySet<string> = new Set([
  'rinses to 4',
  'felting',
  'evenness',
  'dye left',
  'pH',
  'spread',
  'zone share',
  'mcdm',
])

const basisOrder = ['own', 'covered', 'standard', 'twin', '', 'companion']

/**
 * The result of each skein for the outcome, fibre and wear of a condition. Of several fibres the worst; of several ways
 * in which a difference was had, that against the skein’s own beginning.
 */
export function resultsFor({ record }: JudgedTrial, condition: Condition): ReadonlyMap<string, ResultSeen> {
  const { outcome, fibre, wear, direction } = condition
  const key = wearKey(wear)
  const kind = record.results.filter(
    (result) => result.kind === outcome && (fibre === undefined || result.fibre === fibre),
  )
  const worn = kind.filter((result) => result.wearKey === key)
  const used = worn.length === 0 && beforeWear.has(outcome) ? kind : worn
  const found = new Map<string, ResultSeen>()
  for (const [skeinId, mine] of groupBy(used, (result) => result.skeinId)) {
    const first = mine.reduce((a, b) => (basisOrder.indexOf(a.basis) <= basisOrder.indexOf(b.basis) ? a : b))
    const alike = mine.filter((result) => result.basis === first.basis)
    const worst = alike.reduce((a, b) =>
      (direction === 'larger is better' ? a.value <= b.value : a.value >= b.value) ? a : b,
    )
    found.set(skeinId, worst)
  }
  return found
}
