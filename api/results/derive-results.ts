import type { Kysely } from 'kysely'
import { stages } from '#api/contract/trial.ts'
import { wearKey } from '#api/contract/wear.ts'
import { groupBy } from '#api/science/group-by.ts'
import {
  familiesOf,
  type Histories,
  historiesOf,
  outcomesOf,
  type ReadingKept,
  readingsOf,
  rinsesOf,
  type SkeinSeen,
  standardsOf,
  type TrialSeen,
  trialsSeen,
} from '#db/histories.ts'
import { holdKin } from '#db/hold-kin.ts'
import { changeWears, type NewChange, type NewResult, replaceDerived } from '#db/results.ts'
import type { Database, Stage } from '#db/tables.ts'
import {
  type Comparisons,
  changeOf,
  comparisonsOf,
  type Kin,
  type NotCompared,
  readAt,
} from './changes-of.ts'
import { type Place, placesOf } from './places-of.ts'
import { resolvedOf } from './resolved-of.ts'
import type { SkeinResult } from './result-row.ts'
import { resultsOfOutcomes, rinsesTo4 } from './results-of-outcomes.ts'
import { resultsOfReadings } from './results-of-readings.ts'
import { wearFromExposures } from './wear-from-exposures.ts'

/** Whole families are worked out together, about this many skeins at a time. */
const atOnce = 2000

/**
 * Works out everything that follows from what was written of these skeins: the wear of readings that leave it to the
 * exposures, the changes, and the rows that findings read. Call it in the transaction of the write. It takes the
 * whole family of each skein along, and the whole trial of a standard.
 *
 * @returns the comparisons that one would expect and that were not made, with the reason
 */
export async function deriveResults(
  tx: Kysely<Database>,
  skeinIds: readonly string[],
): Promise<NotCompared[]> {
  const families = await holdKin(tx, skeinIds)
  const notCompared: NotCompared[] = []
  let group: string[] = []
  for (const [index, family] of families.entries()) {
    group.push(...family.ids)
    if (group.length < atOnce && index < families.length - 1) continue
    notCompared.push(...(await deriveOf(tx, group)))
    group = []
  }
  return notCompared
}

async function deriveOf(tx: Kysely<Database>, ids: readonly string[]): Promise<NotCompared[]> {
  const sources = await sourcesOf(tx, ids)
  const changes: NewChange[] = []
  const results: NewResult[] = []
  const notCompared: NotCompared[] = []
  for (const skein of sources.histories.skeins.values()) {
    const comparisons = comparisonsOf(skein, kinOf(skein, sources))
    notCompared.push(...comparisons.notCompared)
    for (const it of comparisons.compared) changes.push(changeOf(it))
    if (skein.trialId !== null) results.push(...rowsOf(skein, skein.trialId, comparisons, sources))
  }
  await replaceDerived(tx, ids, { changes, results })
  return notCompared
}

/** The comparisons of one reading as they stand, and those that were not made, worked out anew. */
export async function comparisonsOfReading(
  db: Kysely<Database>,
  { id, skeinId }: { id: string; skeinId: string },
): Promise<NotCompared[]> {
  const families = await familiesOf(db, [skeinId])
  const sources = await sourcesOf(
    db,
    families.flatMap((family) => family.ids),
    { readOnly: true },
  )
  const skein = sources.histories.skeins.get(skeinId)
  if (!skein) return []
  return comparisonsOf(skein, kinOf(skein, sources)).notCompared.filter((it) => it.readingId === id)
}

type Sources = Awaited<ReturnType<typeof sourcesOf>>

async function sourcesOf(
  db: Kysely<Database>,
  ids: readonly string[],
  { readOnly = false }: { readOnly?: boolean } = {},
) {
  const histories = await historiesOf(db, ids)
  const kept = await readingsOf(db, ids)
  const readings = readOnly ? kept : await withWearsOfExposures(db, kept, histories)
  const skeins = [...histories.skeins.values()]
  const trialIds = [...new Set(skeins.flatMap((skein) => skein.trialId ?? []))]
  const places = new Map(skeins.map((skein) => [skein.id, placesOf(skein.id, histories)]))
  const vesselIds = [...new Set([...places.values()].flat().map((place) => place.vesselId))]
  const outcomes = await outcomesOf(db, { skeinIds: ids, vesselIds })
  const rinses = await rinsesOf(db, { skeinIds: ids, vesselIds })
  return {
    histories,
    places,
    trials: await trialsSeen(db, trialIds),
    readings: groupBy(readings, (it) => it.skeinId),
    standards: groupBy(await standardsOf(db, trialIds), (it) => it.trialId),
    outcomes: groupBy(outcomes, (it) => it.skeinId ?? it.vesselId ?? ''),
    rinses: groupBy(rinses, (it) => it.skeinId ?? it.vesselId ?? ''),
    covered: new Set(
      skeins.filter((it) => histories.places.get(it.id)?.some((place) => place.covered)).map((it) => it.id),
    ),
    families: familyIndex(histories),
  }
}

/** Readings that left their wear to the exposures follow what is known of these now. */
async function withWearsOfExposures(
  db: Kysely<Database>,
  readings: readonly ReadingKept[],
  histories: Histories,
): Promise<readonly ReadingKept[]> {
  const changed = new Map<string, ReadingKept>()
  for (const reading of readings) {
    if (reading.wearFrom !== 'exposures') continue
    const at = readAt(reading) ?? reading.createdAt.getTime()
    const { wear } = wearFromExposures(reading.skeinId, at, histories)
    if (wearKey(wear) !== wearKey(reading.wear)) changed.set(reading.id, { ...reading, wear })
  }
  if (changed.size === 0) return readings
  await changeWears(db, [...changed.values()])
  return readings.map((reading) => changed.get(reading.id) ?? reading)
}

/** The skeins of each family, by its root. */
function familyIndex({ skeins }: Histories) {
  const rootOf = (skein: SkeinSeen): string => {
    let it = skein
    const seen = new Set([it.id])
    while (it.cutFromId !== null && !seen.has(it.cutFromId)) {
      const parent = skeins.get(it.cutFromId)
      if (!parent) break
      seen.add(parent.id)
      it = parent
    }
    return it.id
  }
  const byRoot = new Map<string, Map<string, SkeinSeen>>()
  const roots = new Map<string, string>()
  for (const skein of skeins.values()) {
    const root = rootOf(skein)
    roots.set(skein.id, root)
    const family = byRoot.get(root) ?? new Map<string, SkeinSeen>()
    byRoot.set(root, family.set(skein.id, skein))
  }
  return { of: (id: string) => byRoot.get(roots.get(id) ?? '') ?? new Map<string, SkeinSeen>() }
}

function kinOf(skein: SkeinSeen, { families, readings, covered, standards }: Sources): Kin {
  return {
    skeins: families.of(skein.id),
    readings,
    covered,
    standards: skein.trialId === null ? [] : (standards.get(skein.trialId) ?? []),
  }
}

function rowsOf(skein: SkeinSeen, trialId: string, { compared }: Comparisons, sources: Sources): NewResult[] {
  const places = sources.places.get(skein.id) ?? []
  const trial = sources.trials.get(trialId)
  const vessels = vesselsOf(places)
  const sessionId = mainSession(places, trial)
  const found = new Map<string, SkeinResult>()
  const take = (results: readonly SkeinResult[]) => {
    for (const it of results) {
      const key = JSON.stringify([it.kind, it.fibre, it.basis, wearKey(it.wear)])
      if (!found.has(key)) found.set(key, it)
    }
  }
  // In order of trust: what was read, what was graded on the skein itself, what was measured of its vessel.
  take(resultsOfReadings(skein, sources.readings.get(skein.id) ?? [], compared))
  take(resultsOfOutcomes(sources.outcomes.get(skein.id) ?? []))
  const ofVessels = places.flatMap((place) => sources.outcomes.get(place.vesselId) ?? [])
  take(resultsOfOutcomes(ofVessels))
  const counted =
    rinsesTo4(sources.rinses.get(skein.id) ?? []) ??
    rinsesTo4(places.flatMap((place) => sources.rinses.get(place.vesselId) ?? []))
  if (counted) take([counted])
  if (found.size === 0) return []
  const resolved = resolvedOf(skein, places, {
    histories: sources.histories,
    trial,
    mainSession: sessionId,
  })
  return [...found.values()].map((it) => {
    const amounts = Object.values(it.wear)
    return {
      ...it,
      trialId,
      skeinId: skein.id,
      sessionId,
      vessels,
      lotId: vessels.dye ?? null,
      parentId: skein.cutFromId,
      wearKey: wearKey(it.wear),
      wearAmount: amounts.length === 1 ? (amounts[0] ?? null) : null,
      resolved,
    }
  })
}

/** The vessel at each stage; of several at one stage the last. */
function vesselsOf(places: readonly Place[]): Partial<Record<Stage, string>> {
  const vessels: Partial<Record<Stage, string>> = {}
  for (const place of places) vessels[place.stage] = place.vesselId
  return vessels
}

/** The session of the vessel at the stage of the trial's first factor, else of the earliest vessel. */
function mainSession(places: readonly Place[], trial: TrialSeen | undefined): string | null {
  const atStage = places.findLast((place) => place.stage === trial?.stage)
  if (atStage) return atStage.sessionId
  let first: Place | undefined
  for (const place of places)
    if (!first || stages.indexOf(place.stage) < stages.indexOf(first.stage)) first = place
  return first?.sessionId ?? null
}
