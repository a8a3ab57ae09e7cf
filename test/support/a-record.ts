import { wearKey } from '#api/contract/wear.ts'
import { type JudgedTrial, judgedTrial } from '#api/judging/judged-trial.ts'
import type { Pattern, Role, Stage, Status, Wear } from '#db/tables.ts'
import type { PlaceRecord, ResultSeen, SkeinRecord, TrialRecord, VesselSeen } from '#db/trial-record.ts'
import type { FactorWithLevels } from '#db/trials.ts'

/** A trial’s record as it comes from the database, written down in a few words. Ids begin with “#”, so that one in a sentence is seen. */
export type RecordWritten = {
  readonly pattern?: Pattern
  readonly block?: 'session' | 'vessel' | 'parent'
  readonly factors?: readonly FactorWritten[]
  readonly sessions?: readonly string[]
  readonly vessels?: readonly VesselWritten[]
  readonly skeins: readonly SkeinWritten[]
}
export type FactorWritten = {
  readonly key: string
  readonly stage: Stage
  readonly levels: readonly (string | number)[]
  readonly reference?: string | number
  readonly ordered?: boolean
  readonly unit?: string
}
export type VesselWritten = {
  readonly label: string
  readonly stage: Stage
  readonly session?: string
  readonly kind?: VesselSeen['kind']
  readonly lost?: string
}
export type SkeinWritten = {
  readonly code: string
  readonly role?: Role
  readonly cutFrom?: string
  /** The labels of its vessels; one under foil ends in “ (foil)”. */
  readonly in?: readonly string[]
  /** From factor to level. */
  readonly level?: Readonly<Record<string, string | number>>
  readonly wool?: number
  readonly lost?: string
  readonly results?: readonly ResultWritten[]
}
export type ResultWritten = {
  readonly kind: string
  readonly value: number
  readonly wear?: Wear
  readonly fibre?: string
  readonly basis?: string
  readonly gradings?: number
  readonly spots?: number
  /** ΔL*, Δa*, Δb*, where it was read. */
  readonly by?: readonly [number, number, number]
}

const day = new Date('2026-03-01T08:00:00Z')
const row = (id: string) => ({ id: `#${id}`, version: 1, createdAt: day })

export function recordOf(written: RecordWritten): TrialRecord {
  const factors = (written.factors ?? []).map(factorOf)
  const sessions = written.sessions ?? ['1']
  return {
    trial: {
      ...row('trial'),
      title: 'A trial',
      question: 'Does it hold?',
      expectation: null,
      pattern: written.pattern ?? 'own',
      block: written.block ?? 'session',
      seed: null,
      conditions: {},
      held: [],
      invented: true,
      archivedAt: null,
      journalFrom: day,
    },
    factors,
    rules: [],
    skeins: written.skeins.map(skeinOf),
    places: written.skeins.flatMap(({ code, in: vessels = [] }) => vessels.map((it) => placeOf(code, it))),
    vessels: (written.vessels ?? []).map((it) => vesselOf(it, sessions[0] ?? '1')),
    sessions: sessions.map((label) => ({
      ...row(label),
      trialId: '#trial',
      kind: 'stove' as const,
      heldOn: null,
      label,
      place: null,
      altitudeM: null,
      waterAlkalinityMgL: null,
      conditions: {},
      note: null,
    })),
    treatments: written.skeins.flatMap(({ code, level = {} }) =>
      Object.entries(level).map(([key, label]) => ({
        id: `#${code} ${key}`,
        factorId: `#${key}`,
        levelId: `#${key} ${label}`,
        drawnLevelId: null,
        sessionId: null,
        vesselId: null,
        skeinId: `#${code}`,
      })),
    ),
    results: written.skeins.flatMap((skein) =>
      (skein.results ?? []).map((it, place) => resultOf(skein, it, place)),
    ),
    colours: [],
    journal: [],
    outcomes: [],
    readings: [],
    methods: [],
    exposures: [],
    viewings: [],
    graders: [],
    reports: 0,
    twins: [],
  }
}

export function judgedRecord(written: RecordWritten): JudgedTrial {
  return judgedTrial(recordOf(written))
}

function factorOf({ key, stage, levels, reference, ordered, unit }: FactorWritten): FactorWithLevels {
  const number = levels.every((level) => typeof level === 'number')
  return {
    ...row(key),
    trialId: '#trial',
    key,
    stage,
    kind: number ? 'number' : 'category',
    ordered: ordered ?? number,
    unit: unit ?? null,
    levels: levels.map((level, position) => ({
      ...row(`${key} ${level}`),
      factorId: `#${key}`,
      position,
      label: String(level),
      value: typeof level === 'number' ? level : null,
      isReference: level === reference,
    })),
  }
}

function vesselOf({ label, stage, session, kind, lost }: VesselWritten, first: string): VesselSeen {
  return {
    ...row(label),
    sessionId: `#${session ?? first}`,
    stage,
    kind: kind ?? 'pot',
    label,
    equipment: null,
    place: null,
    drawnOrder: null,
    recipeId: null,
    conditions: {},
    assumed: false,
    status: lost === undefined ? 'done' : 'lost',
    lostReason: lost ?? null,
  }
}

function skeinOf({ code, role = 'treated', cutFrom, wool, lost }: SkeinWritten): SkeinRecord {
  const status: Status = lost === undefined ? 'done' : 'lost'
  return {
    id: `#${code}`,
    code,
    role,
    cutFromId: cutFrom === undefined ? null : `#${cutFrom}`,
    status,
    lostReason: lost ?? null,
    baseId: null,
    base: null,
    massG: 10,
    blueWoolNumber: wool ?? null,
  }
}

function placeOf(code: string, vessel: string): PlaceRecord {
  const covered = vessel.endsWith(' (foil)')
  return {
    id: `#${code} in ${vessel}`,
    skeinId: `#${code}`,
    vesselId: `#${covered ? vessel.slice(0, -' (foil)'.length) : vessel}`,
    place: null,
    covered,
  }
}

function resultOf({ code, cutFrom }: SkeinWritten, it: ResultWritten, place: number): ResultSeen {
  const { kind, value, wear = {}, fibre = '', basis = '', gradings = 1, spots = 0, by } = it
  const amounts = Object.values(wear)
  return {
    ...row(`${code} result ${place}`),
    trialId: '#trial',
    skeinId: `#${code}`,
    sessionId: null,
    vessels: {},
    lotId: null,
    parentId: cutFrom === undefined ? null : `#${cutFrom}`,
    kind,
    fibre,
    basis,
    wear,
    wearKey: wearKey(wear),
    wearAmount: amounts.length === 1 ? (amounts[0] ?? null) : null,
    value,
    text: null,
    dL: by?.[0] ?? null,
    dA: by?.[1] ?? null,
    dB: by?.[2] ?? null,
    readingsN: gradings,
    spotsN: spots,
    settings: '',
    resolved: {},
    firstRecordedAt: day,
  }
}
