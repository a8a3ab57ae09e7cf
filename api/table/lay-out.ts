import type { Column, NewTable } from '#api/contract/table.ts'
import { newId } from '#db/new-id.ts'
import type { Role, Stage } from '#db/tables.ts'
import { LaidOut, type SkeinDraft, type There, type VesselDraft } from './laid-out.ts'
import { lotLabel, pieceCodes } from './piece-codes.ts'
import type { LevelValue, OutcomeValue, RowValues } from './row-values.ts'

export type Around = There & {
  /** The stage of each factor, and the ids of its levels by factor and label. */
  readonly stageOf: ReadonlyMap<string, Stage>
  readonly levelIds: ReadonlyMap<string, { readonly factorId: string; readonly levelId: string }>
}

type Answers = Pick<
  NewTable,
  'ownVessel' | 'otherOrder' | 'blankRows' | 'standard' | 'twinsAreParts' | 'method' | 'instrumentId'
>
type Given = { readonly vessel: VesselDraft; readonly skeinId: string; readonly level: LevelValue }

export const nameOfLevel = (factor: string, label: string) => `${factor}\u0001${label}`

/**
 * Lays the rows of a table out as records: what each column becomes is said by the data model (section 5). A level is
 * given to the vessel at its factor's stage; where pieces of one vessel had different levels, to the pieces.
 */
export function layOut(
  rows: readonly RowValues[],
  { columns, answers, around }: { columns: readonly Column[]; answers: Answers; around: Around },
): LaidOut {
  const framed = columns.some((column) => column.as === 'frame')
  const out = new LaidOut(around, {
    method: answers.method ?? (framed ? 'photo' : 'instrument'),
    instrumentId: answers.instrumentId ?? null,
  })
  const codeOf = pieceCodes(rows, around.skeinIds)
  const assumed = answers.ownVessel === undefined
  const onBench = columns.some((column) => column.as === 'session' && /bench/i.test(column.heading))
  const given: Given[] = []

  for (const row of rows) {
    const code = codeOf(row)
    const shared =
      answers.ownVessel === false ? row.levels.map((level) => level.label).join(' ') || 'shared' : null
    const before = out.skeinOf(code)
    const skeinId = before ?? newPiece(row, code, shared)
    if (before !== undefined && out.known.has(before)) {
      tellFate(before, row)
      if (answers.otherOrder) tellGiven(before, row)
    }
    const jar = shared === null ? code : `${row.session ?? ''} ${shared}`.trim()
    const wornAs = { label: jar, assumed, card: row.card }
    const isTwin = around.twins.has(code) || isNamedTwin(code)
    for (const reading of row.readings) {
      out.reading(skeinId, reading, { frame: row.frame, isTwin })
      if (!isTwin) out.wearOut(skeinId, reading.wear, wornAs)
    }
    for (const outcome of row.outcomes) {
      if (outcome.of === 'vessel') keep(outcome, null, out.firstVesselOf(skeinId))
      else if (outcome.role === 'dark twin') darkTwin(row, code, outcome)
      else if (outcome.of === 'part') cutPart(row, code, outcome)
      else if (isTwin) keep({ ...outcome, wear: {} }, skeinId, null)
      else {
        out.wearOut(skeinId, outcome.wear, wornAs)
        keep(outcome, skeinId, null)
      }
    }
  }
  treat()
  out.keepOrder()
  return out

  function tellFate(id: string, row: RowValues): void {
    const { status, lostReason } = fateOf(row)
    if (status !== 'planned') out.fates.push({ id, lostReason })
  }

  function tellGiven(skeinId: string, row: RowValues): void {
    for (const level of row.levels) {
      const ids = around.levelIds.get(nameOfLevel(level.factor, level.label))
      if (ids) out.given.push({ skeinId, ...ids })
    }
  }

  function fateOf(row: RowValues): Pick<SkeinDraft, 'status' | 'lostReason'> {
    const unread = row.readings.length === 0 && row.outcomes.length === 0
    const notDone = answers.blankRows === undefined || answers.blankRows === 'not done'
    const lostReason = row.lostBecause ?? (unread && !notDone ? (answers.blankRows ?? null) : null)
    return { status: lostReason !== null ? 'lost' : unread ? 'planned' : 'done', lostReason }
  }

  function newPiece(row: RowValues, code: string, shared: string | null): string {
    const parent = parentOf(row, code, answers)
    const skeinId = out.skein(code, {
      ...pieceOf(row, code),
      cutFromId: parent === null ? null : out.skein(parent),
    })
    const own = shared === null
    for (const [stage, named] of vesselsOf(row)) {
      const vessel = out.vessel(sessionOf(row), stage, named ?? shared ?? row.place ?? code, {
        ...(named !== null && stage === 'dye' ? { kind: 'pot' } : {}),
        ...(named === null && own ? { place: row.place, drawnOrder: orderIn(row.place) } : {}),
        ...(named === null && own && row.lostBecause !== null
          ? { status: 'lost', lostReason: row.lostBecause }
          : {}),
        equipment: row.equipment,
        assumed: named === null && assumed,
      })
      out.put(skeinId, vessel.id, row.place)
      for (const level of row.levels)
        if (stageOf(level.factor) === stage) given.push({ vessel, skeinId, level })
    }
    return skeinId
  }

  /** The stages at which a row's piece lay in a vessel, each with the name that the row gives it. */
  function vesselsOf(row: RowValues): Map<Stage, string | null> {
    const stages = new Map<Stage, string | null>()
    for (const level of row.levels) stages.set(stageOf(level.factor), null)
    const first = [...stages.keys()][0] ?? 'dye'
    if (row.vessel !== null) stages.set(first, row.vessel)
    const lot = lotLabel(row)
    if (lot !== null) stages.set('dye', lot)
    if (row.card !== null) stages.set('light', `card ${row.card}`)
    if (stages.size === 0 && row.item === null && row.frame === null) stages.set('dye', null)
    return stages
  }

  function stageOf(factor: string): Stage {
    return around.stageOf.get(factor) ?? 'dye'
  }

  function sessionOf(row: RowValues): string {
    if (row.session !== null) return out.session(onBench ? 'bench' : 'stove', row.session)
    if (row.card !== null) return out.session('light', 'window')
    return out.session('stove', row.vessel ?? '1')
  }

  function keep(outcome: OutcomeValue, skeinId: string | null, vesselId: string | null): void {
    const { kind, value, text, unit, fibre, wear } = outcome
    const of = skeinId === null && vesselId === null ? null : { skeinId, vesselId }
    if (of) out.outcomes.push({ id: newId(), kind, ...of, value, text, unit, fibre, wear })
  }

  function darkTwin(row: RowValues, code: string, outcome: OutcomeValue): void {
    const whole = out.skeinOf(parentOf(row, code, answers) ?? code) ?? null
    const twin = out.skein(`${code} dark`, { role: 'dark twin', cutFromId: whole })
    const days = Math.max(1, ...Object.values(outcome.wear))
    out.wearOut(twin, { 'X0 days': days }, { label: `envelope ${code}`, assumed: false, card: null })
    keep(outcome, twin, null)
  }

  /** A part cut for one test, or given one level of its own: its own jar, and its outcome. */
  function cutPart(row: RowValues, code: string, outcome: OutcomeValue): void {
    const name = outcome.level ?? (Object.keys(outcome.wear).sort().join(' ') || 'part')
    const partCode = `${code} ${name}`
    const isNew = out.skeinOf(partCode) === undefined
    const skeinId = out.skein(partCode, { cutFromId: out.skeinOf(code) ?? null })
    if (outcome.level !== null && isNew) {
      const factor = columns.find((column) => column.level === outcome.level)?.factor ?? 'remedy'
      const vessel = out.vessel(sessionOf(row), around.stageOf.get(factor) ?? 'remedy', partCode, { assumed })
      out.put(skeinId, vessel.id)
      given.push({ vessel, skeinId, level: { factor, label: outcome.level, value: null } })
    }
    out.wearOut(skeinId, outcome.wear, { label: partCode, assumed, card: null })
    keep(outcome, skeinId, null)
  }

  function treat(): void {
    const met = new Map<string, Set<string>>()
    const keyOf = ({ vessel, level }: Given) => `${vessel.id}\u0001${level.factor}`
    for (const it of given) met.set(keyOf(it), (met.get(keyOf(it)) ?? new Set()).add(it.level.label))
    const treated = new Set<string>()
    for (const it of given) {
      const ids = around.levelIds.get(nameOfLevel(it.level.factor, it.level.label))
      if (!ids) continue
      const whole = met.get(keyOf(it))?.size === 1
      const thing = whole ? it.vessel.id : it.skeinId
      if (treated.has(`${ids.factorId}${thing}`)) continue
      treated.add(`${ids.factorId}${thing}`)
      out.treatments.push({
        id: newId(),
        ...ids,
        vesselId: whole ? it.vessel.id : null,
        skeinId: whole ? null : it.skeinId,
      })
    }
  }

  function pieceOf(row: RowValues, code: string): Partial<SkeinDraft> {
    const wool = woolNumber(row.item)
    return {
      role: roleOf(row, code, wool),
      blueWoolNumber: wool,
      baseId: row.base === null ? null : out.base(row.base),
      massG: row.massG,
      conditions: row.conditions,
      ...fateOf(row),
    }
  }

  function roleOf(row: RowValues, code: string, wool: number | null): Role {
    if (wool !== null) return 'blue wool'
    if (isNamedTwin(code)) return 'twin'
    const { standard } = answers
    if (standard !== undefined && (row.vessel === standard || lotLabel(row) === standard)) return 'standard'
    return columns.some((column) => column.level !== undefined) ? 'bled' : 'treated'
  }
}

const isNamedTwin = (code: string) => /-twin$/i.test(code)
const orderIn = (place: string | null) => (/^\d{1,6}$/.test(place ?? '') ? Number(place) : null)

function woolNumber(item: string | null): number | null {
  const found = /^(?:bw|blue wool)\s*([1-8])$/i.exec(item ?? '')
  return found ? Number(found[1]) : null
}

/** The code of the piece that this one was cut from: `A` of `A-twin`, the whole skein of an exposed half. */
function parentOf(row: RowValues, code: string, answers: Answers): string | null {
  if (answers.twinsAreParts && isNamedTwin(code)) return code.replace(/-twin$/i, '')
  if (row.item !== null && row.card !== null && woolNumber(row.item) === null) return row.item
  return null
}
