import { groupBy } from '#api/science/group-by.ts'
import type { Stage } from '#db/tables.ts'
import type { PlaceRecord, SessionSeen, SkeinRecord, TrialRecord, VesselSeen } from '#db/trial-record.ts'
import type { FactorWithLevels } from '#db/trials.ts'

/** Where a skein lay for one stage of the work. */
export type Stay = {
  readonly vessel: VesselSeen
  readonly session: SessionSeen | undefined
  readonly place: string | null
}

/** Answers about the histories of a trial’s skeins: where they lay, and which levels they were given. */
export type SkeinHistories = {
  readonly stays: (skein: SkeinRecord) => readonly Stay[]
  readonly stayAt: (skein: SkeinRecord, stage: Stage) => Stay | undefined
  /**
   * The level of a skein: its own treatment, else that of its vessel at the factor’s stage, else of that vessel’s
   * session; a part takes its parent’s (data model, section 3.2).
   */
  readonly levelOf: (skein: SkeinRecord, factor: FactorWithLevels) => string | undefined
  readonly parentOf: (skein: SkeinRecord) => SkeinRecord | undefined
}

export function skeinHistoriesOf(
  record: Pick<TrialRecord, 'skeins' | 'places' | 'vessels' | 'sessions' | 'treatments'>,
): SkeinHistories {
  const skeins = new Map(record.skeins.map((skein) => [skein.id, skein]))
  const vessels = new Map(record.vessels.map((vessel) => [vessel.id, vessel]))
  const sessions = new Map(record.sessions.map((session) => [session.id, session]))
  const places = groupBy(record.places, (place) => place.skeinId)
  const given = new Map(
    record.treatments.map((it) => [
      `${it.factorId}\u0001${it.skeinId ?? it.vesselId ?? it.sessionId}`,
      it.levelId,
    ]),
  )
  const parentOf = (skein: SkeinRecord) =>
    skein.cutFromId === null ? undefined : skeins.get(skein.cutFromId)

  const own = (skein: SkeinRecord): Stay[] =>
    (places.get(skein.id) ?? []).flatMap((place: PlaceRecord) => {
      const vessel = vessels.get(place.vesselId)
      return vessel ? [{ vessel, session: sessions.get(vessel.sessionId), place: place.place }] : []
    })
  const stays = (skein: SkeinRecord): Stay[] => {
    const mine = own(skein)
    const parent = parentOf(skein)
    if (!parent) return mine
    const stages = new Set(mine.map((stay) => stay.vessel.stage))
    return [...stays(parent).filter((stay) => !stages.has(stay.vessel.stage)), ...mine]
  }
  const levelOf = (skein: SkeinRecord, factor: FactorWithLevels): string | undefined => {
    const direct = given.get(`${factor.id}\u0001${skein.id}`)
    if (direct) return direct
    const mine = own(skein)
    const atStage = mine.filter((stay) => stay.vessel.stage === factor.stage)
    for (const stay of atStage) {
      const level =
        given.get(`${factor.id}\u0001${stay.vessel.id}`) ??
        given.get(`${factor.id}\u0001${stay.vessel.sessionId}`)
      if (level) return level
    }
    const parent = parentOf(skein)
    return parent ? levelOf(parent, factor) : undefined
  }
  return {
    stays,
    stayAt: (skein, stage) => stays(skein).find((stay) => stay.vessel.stage === stage),
    levelOf,
    parentOf,
  }
}
