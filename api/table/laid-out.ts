import type { Selectable } from 'kysely'
import { type Wear, wearInWords } from '#api/contract/wear.ts'
import { newId } from '#db/new-id.ts'
import type {
  Conditions,
  ExposureTable,
  Protocol,
  Role,
  SessionTable,
  Stage,
  Status,
  VesselTable,
} from '#db/tables.ts'

type SessionKind = Selectable<SessionTable>['kind']
type VesselKind = Selectable<VesselTable>['kind']

export type VesselDraft = {
  id: string
  sessionId: string
  stage: Stage
  kind: VesselKind
  label: string
  equipment: string | null
  place: string | null
  drawnOrder: number | null
  assumed: boolean
  status: Status
  lostReason: string | null
  conditions: Conditions
}
export type SkeinDraft = {
  id: string
  trialId: string
  code: string
  role: Role
  cutFromId: string | null
  baseId: string | null
  massG: number | null
  blueWoolNumber: number | null
  conditions: Conditions
  status: Status
  lostReason: string | null
}
type ExposureDraft = {
  id: string
  vesselId: string
  protocol: Selectable<ExposureTable>['protocol']
  cycles: number | null
  strokes: number | null
  conditions: Conditions
  due: string[]
}
export type OutcomeDraft = {
  id: string
  kind: string
  skeinId: string | null
  vesselId: string | null
  value: number
  text: string | null
  unit: string | null
  fibre: string | null
  wear: Wear
}
export type ReadingDraft = {
  id: string
  skeinId: string
  sittingId: string
  wear: Wear
  spots: { l: number; a: number; b: number }[]
}

const vesselKinds: Record<Stage, VesselKind> = {
  soak: 'bowl',
  dye: 'jar',
  set: 'packet',
  rinse: 'bowl',
  dry: 'tray',
  wash: 'jar',
  contact: 'tray',
  rub: 'tray',
  light: 'card',
  remedy: 'jar',
}

/** What is there already in the trial, by the names under which a table may speak of it. */
export type There = {
  readonly trialId: string
  readonly sessionIds: ReadonlyMap<string, string>
  readonly skeinIds: ReadonlyMap<string, string>
  /** Codes of the twins among them, which are kept untreated. */
  readonly twins: ReadonlySet<string>
  readonly baseIds: ReadonlyMap<string, string>
}

export const nameOfSession = (kind: string, label: string) => `${kind}\u0001${label}`

/**
 * Records in the making. Whatever is named twice is made once: a session, a vessel of a session and stage, a skein by
 * its code, a sitting by its label; what the trial has already is taken from `there`.
 */
export class LaidOut {
  readonly bases: { id: string; name: string; superwash: 'unknown'; composition: [] }[] = []
  readonly sessions: {
    id: string
    trialId: string
    kind: SessionKind
    label: string
    conditions: Conditions
  }[] = []
  readonly vessels: VesselDraft[] = []
  readonly skeins: SkeinDraft[] = []
  readonly placements: {
    id: string
    skeinId: string
    vesselId: string
    place: string | null
    covered: boolean
  }[] = []
  readonly treatments: {
    id: string
    factorId: string
    levelId: string
    vesselId: string | null
    skeinId: string | null
  }[] = []
  readonly sittings: {
    id: string
    trialId: string
    method: string
    label: string
    instrumentId: string | null
  }[] = []
  readonly readings: ReadingDraft[] = []
  readonly outcomes: OutcomeDraft[] = []
  readonly exposures: ExposureDraft[] = []
  /** Skeins that were there before and have new measurements. */
  readonly known = new Set<string>()
  /** What became of those. */
  readonly fates: { id: string; lostReason: string | null }[] = []
  /** What those were given, as the table says. */
  readonly given: { skeinId: string; factorId: string; levelId: string }[] = []

  readonly #there: There
  readonly #sittingsAre: { method: string; instrumentId: string | null }
  readonly #sessions = new Map<string, string>()
  readonly #vessels = new Map<string, VesselDraft>()
  readonly #skeins = new Map<string, SkeinDraft>()
  readonly #bases = new Map<string, string>()
  readonly #sittings = new Map<string, string>()
  readonly #placed = new Map<string, Set<string>>()
  readonly #exposures = new Map<string, ExposureDraft>()

  constructor(there: There, sittingsAre: { method: string; instrumentId: string | null }) {
    this.#there = there
    this.#sittingsAre = sittingsAre
  }

  base(name: string): string {
    return once(this.#bases, name, this.#there.baseIds, (id) =>
      this.bases.push({ id, name, superwash: 'unknown', composition: [] }),
    )
  }

  session(kind: SessionKind, label: string): string {
    return once(this.#sessions, nameOfSession(kind, label), this.#there.sessionIds, (id) =>
      this.sessions.push({ id, trialId: this.#there.trialId, kind, label, conditions: {} }),
    )
  }

  vessel(sessionId: string, stage: Stage, label: string, more: Partial<VesselDraft> = {}): VesselDraft {
    const key = `${sessionId}\u0001${stage}\u0001${label}`
    const there = this.#vessels.get(key)
    if (there) return there
    const vessel: VesselDraft = {
      id: newId(),
      sessionId,
      stage,
      kind: vesselKinds[stage],
      label,
      equipment: null,
      place: null,
      drawnOrder: null,
      assumed: false,
      status: 'done',
      lostReason: null,
      conditions: {},
      ...more,
    }
    this.#vessels.set(key, vessel)
    this.vessels.push(vessel)
    return vessel
  }

  /** The id of a skein that is there already, in the trial or in this table. */
  skeinOf(code: string): string | undefined {
    const drafted = this.#skeins.get(code)
    if (drafted) return drafted.id
    const there = this.#there.skeinIds.get(code)
    if (there) this.known.add(there)
    return there
  }

  skein(code: string, more: Partial<SkeinDraft> = {}): string {
    const there = this.skeinOf(code)
    if (there) return there
    const skein: SkeinDraft = {
      id: newId(),
      trialId: this.#there.trialId,
      code,
      role: 'treated',
      cutFromId: null,
      baseId: null,
      massG: null,
      blueWoolNumber: null,
      conditions: {},
      status: 'done',
      lostReason: null,
      ...more,
    }
    this.#skeins.set(code, skein)
    this.skeins.push(skein)
    return skein.id
  }

  /** Puts a piece into a vessel, once. */
  put(skeinId: string, vesselId: string, place: string | null = null): void {
    const vessels = this.#placed.get(skeinId)
    if (vessels?.has(vesselId)) return
    this.#placed.set(skeinId, (vessels ?? new Set()).add(vesselId))
    this.placements.push({ id: newId(), skeinId, vesselId, place, covered: false })
  }

  /** The vessel in which a piece lay first. */
  firstVesselOf(skeinId: string): string | null {
    const [first = null] = this.#placed.get(skeinId) ?? []
    return first
  }

  sitting(label: string): string {
    return once(this.#sittings, label, new Map(), (id) =>
      this.sittings.push({ id, trialId: this.#there.trialId, label, ...this.#sittingsAre }),
    )
  }

  /** Wears a piece: a vessel to be washed, rubbed or lit in, once for each piece and protocol, and its exposure. */
  wearOut(
    skeinId: string,
    wear: Wear,
    { label, assumed, card }: { label: string; assumed: boolean; card: string | null },
  ): void {
    for (const [axis, amount] of Object.entries(wear)) {
      const protocol = axis.replace(' days', '') as Protocol
      const mine = `${skeinId}\u0001${protocol}`
      const before = this.#exposures.get(mine)
      if (before) {
        if (before.strokes !== null) before.strokes = Math.max(before.strokes, Math.round(amount))
        if (before.cycles !== null) before.cycles = Math.max(before.cycles, Math.round(amount))
        continue
      }
      const stage = stageOfWear(axis)
      const onCard = stage === 'light' && card !== null && protocol !== 'X0'
      const vessel = this.vessel(
        this.session(kindOfWear(stage), onCard ? 'window' : stage),
        stage,
        onCard ? `card ${card}` : label,
        {
          assumed: assumed && !onCard,
          ...(protocol === 'X0' ? { kind: 'tray' } : {}),
        },
      )
      this.put(skeinId, vessel.id)
      const ours = `${vessel.id}\u0001${protocol}`
      const shared = this.#exposures.get(ours)
      const exposure = shared ?? {
        id: newId(),
        vesselId: vessel.id,
        protocol,
        cycles: stage === 'rub' || stage === 'light' ? null : Math.round(amount),
        strokes: stage === 'rub' ? Math.round(amount) : null,
        conditions: {},
        due: [],
      }
      if (!shared) this.exposures.push(exposure)
      this.#exposures.set(ours, exposure)
      this.#exposures.set(mine, exposure)
    }
  }

  /** A reading in the sitting of its wear; a twin was read in that sitting as well, and is untouched all the same. */
  reading(
    skeinId: string,
    at: { wear: Wear; l: number; a: number; b: number },
    { frame, isTwin }: { frame: string | null; isTwin: boolean },
  ): void {
    const untouched = Object.keys(at.wear).length === 0
    const sittingId = this.sitting(frame ?? (untouched ? 'before' : `after ${wearInWords(at.wear)}`))
    this.readings.push({
      id: newId(),
      skeinId,
      sittingId,
      wear: isTwin ? {} : at.wear,
      spots: [{ l: at.l, a: at.a, b: at.b }],
    })
  }

  /** Lets the ids of the readings rise: written down at one moment, they are told apart by nothing else later. */
  keepOrder(): void {
    const rising = this.readings.map(({ id }) => id).sort()
    for (const [place, reading] of this.readings.entries()) reading.id = rising[place] ?? reading.id
  }
}

function once(
  made: Map<string, string>,
  name: string,
  there: ReadonlyMap<string, string>,
  make: (id: string) => void,
): string {
  const before = made.get(name) ?? there.get(name)
  if (before) return before
  const id = newId()
  made.set(name, id)
  make(id)
  return id
}

function stageOfWear(axis: string): Stage {
  if (axis.startsWith('X')) return 'light'
  if (axis.startsWith('rub')) return 'rub'
  return axis === 'W5' ? 'contact' : 'wash'
}

function kindOfWear(stage: Stage): SessionKind {
  return stage === 'light' || stage === 'rub' || stage === 'contact' ? stage : 'wash'
}
