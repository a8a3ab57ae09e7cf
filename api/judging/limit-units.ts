import type { Counted } from '#api/contract/patterns.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { ResultSeen, SkeinRecord } from '#db/trial-record.ts'
import type { LevelRow } from '#db/trials.ts'
import type { Asked } from './asked.ts'
import { judgedRows, resultsFor } from './judged-rows.ts'
import { blockWords, lotInWords, sessionInWords, sessionWords } from './units-in-words.ts'

/** One session or lot of a level with what was found of it: the worst over its skeins, their parts and fibres. */
export type LimitUnit = {
  /** As it stands in a sentence: “lot B”, “session 3”. */
  readonly name: string
  /** Undefined: not recorded, or lost before it was. */
  readonly value: number | undefined
  /** Gradings by eye behind the value, whose median it is; 0 where it was measured. */
  readonly gradings: number
  /** Why it was lost before it was graded. One lost after that keeps its grade. */
  readonly lost: string | undefined
}

/** What the units of a limit are called. */
export function limitUnitWords({ trial, condition }: Pick<Asked, 'trial' | 'condition'>): Counted {
  return condition.byLot ? { one: 'lot', many: 'lots' } : blockWords(trial)
}

/** The sessions (cards, parents) or dye lots of a level, each with its worst value for a condition with a limit. */
export function limitUnits(asked: Asked, level: LevelRow): LimitUnit[] {
  const { trial, condition } = asked
  // Of several fibres the worst is kept, and which that is follows from the limit.
  const direction = condition.atLeast === undefined ? 'smaller is better' : 'larger is better'
  const results = resultsFor(trial, { ...condition, direction })
  const found = condition.byLot ? lotsOf(asked, level, results) : blocksOf(asked, level, results)
  const units = found.map(({ name, session, skeins }) => {
    const worst = worstOf(skeins, condition)
    return {
      name,
      session,
      value: worst?.value,
      gradings: worst === undefined || worst.spotsN > 0 ? 0 : worst.readingsN,
      lost: worst === undefined ? lostOf(skeins) : undefined,
    }
  })
  const names = groupBy(units, (unit) => unit.name)
  return units.map(({ session, name, ...unit }) => ({
    ...unit,
    name: (names.get(name)?.length ?? 0) > 1 && session !== '' ? `${name}, ${session}` : name,
  }))
}

type Graded = {
  readonly result: ResultSeen | undefined
  readonly lost: string | undefined
  /** Cut from another skein of the unit. */
  readonly part: boolean
}
type Found = { readonly name: string; readonly session: string; readonly skeins: readonly Graded[] }
type Results = ReadonlyMap<string, ResultSeen>

/** Skeins that are given levels; twins, blanks and controls are judged on their own. */
const treated: ReadonlySet<string> = new Set(['treated', 'bled'])

function lotsOf(asked: Asked, level: LevelRow, results: Results): Found[] {
  const { trial, factor, stratum } = asked
  const { histories, record } = trial
  const skeins = record.skeins.filter(
    (skein) =>
      treated.has(skein.role) &&
      histories.levelOf(skein, factor) === level.id &&
      stratum.parts.every((part) => histories.levelOf(skein, part.factor) === part.level.id),
  )
  const lots = groupBy(skeins, (skein) => histories.stayAt(skein, 'dye')?.vessel.id)
  return [...lots].flatMap(([id, members]) => {
    const stay = members[0] && histories.stayAt(members[0], 'dye')
    if (id === undefined || stay === undefined) return []
    const { vessel, session } = stay
    return [
      {
        name: lotInWords(vessel.label, level.label),
        session: session ? sessionName(asked, session.label) : '',
        skeins: members.map((skein) => ({
          result: results.get(skein.id),
          part: members.some(({ id }) => id === skein.cutFromId),
          lost: lossOf(skein) ?? (vessel.status === 'lost' ? reasonOf(vessel.lostReason) : undefined),
        })),
      },
    ]
  })
}

function blocksOf(asked: Asked, level: LevelRow, results: Results): Found[] {
  const { trial, factor } = asked
  const { record, histories } = trial
  const parts = groupBy(record.skeins, (skein) => skein.cutFromId)
  const withParts = (skein: SkeinRecord): SkeinRecord[] => [
    skein,
    ...(parts.get(skein.id) ?? [])
      .filter((part) => treated.has(part.role) && histories.levelOf(part, factor) === level.id)
      .flatMap(withParts),
  ]
  const rows = judgedRows(asked).filter((row) => row.levelId === level.id)
  return [...groupBy(rows, (row) => row.block)].map(([block, mine]) => ({
    name: blockName(asked, block, mine[0]?.vessel),
    session: '',
    skeins: mine.flatMap((row) =>
      withParts(row.skein).map((skein) => ({
        result: results.get(skein.id),
        part: skein !== row.skein,
        lost: lossOf(skein) ?? row.lost,
      })),
    ),
  }))
}

function blockName(asked: Asked, block: string, vesselId: string | undefined): string {
  const { record } = asked.trial
  if (record.trial.block === 'parent') return record.skeins.find(({ id }) => id === block)?.code ?? 'a skein'
  if (record.trial.block === 'vessel')
    return record.vessels.find(({ id }) => id === vesselId)?.label ?? blockWords(asked.trial).one
  return sessionName(asked, record.sessions.find(({ id }) => id === block)?.label ?? '')
}

const sessionName = ({ trial }: Asked, label: string): string =>
  sessionInWords(label, sessionWords(trial).one)

function worstOf(
  skeins: readonly Graded[],
  { atLeast, atMost }: Pick<Asked['condition'], 'atLeast' | 'atMost'>,
): ResultSeen | undefined {
  const excess = ({ value }: ResultSeen) =>
    Math.max(
      atLeast === undefined ? Number.NEGATIVE_INFINITY : atLeast - value,
      atMost === undefined ? Number.NEGATIVE_INFINITY : value - atMost,
    )
  let worst: ResultSeen | undefined
  for (const { result } of skeins)
    if (result && (worst === undefined || excess(result) > excess(worst))) worst = result
  return worst
}

/** A unit is lost when every skein of it is; parts that were cut from a lost one do not stand for it. */
function lostOf(skeins: readonly Graded[]): string | undefined {
  const wholes = skeins.filter(({ part }) => !part)
  return wholes.every(({ lost }) => lost !== undefined) ? wholes[0]?.lost : undefined
}

function lossOf({ status, lostReason }: SkeinRecord): string | undefined {
  return status === 'lost' ? reasonOf(lostReason) : undefined
}

const reasonOf = (reason: string | null): string => reason ?? 'no reason given'
