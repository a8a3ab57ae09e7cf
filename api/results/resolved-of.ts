import { bounds, isVariable } from '#api/contract/bounds.ts'
import { type Layer, mergeConditions } from '#api/science/design/merge-conditions.ts'
import type { Histories, SkeinSeen, TrialSeen } from '#db/histories.ts'
import type { Conditions, Stage } from '#db/tables.ts'
import type { Place } from './places-of.ts'

/**
 * The conditions of a skein after merging: trial, sessions, vessels, skein, parents before children. What a session
 * says of a stage counts for the skeins that were at this stage in it; what it says of no stage (altitude, water)
 * counts most where the session is the main one.
 */
export function resolvedOf(
  skein: SkeinSeen,
  places: readonly Place[],
  {
    histories,
    trial,
    mainSession,
  }: { histories: Histories; trial: TrialSeen | undefined; mainSession: string | null },
): Conditions {
  const stagesHere = new Set(places.map((place) => place.stage))
  const main = places.filter((place) => place.sessionId === mainSession)
  const others = places.filter((place) => place.sessionId !== mainSession)
  const sessions = [...others, ...main].map((place) =>
    ofStage(
      {
        ...(place.altitudeM === null ? {} : { altitude: place.altitudeM }),
        ...(place.waterAlkalinityMgL === null ? {} : { tapAlkalinity: place.waterAlkalinityMgL }),
        ...place.sessionConditions,
      },
      place.stage,
      stagesHere,
    ),
  )
  const vessels = places.map((place) => place.vesselConditions)
  const line = lineOf(skein, histories)
  const own = line.map((it) => (it.conditions ?? {}) as Layer)
  const weight: Layer = skein.massG === null ? {} : { fibreMass: skein.massG }
  return mergeConditions(trial?.conditions ?? {}, sessions, vessels, [
    ...own.slice(0, -1),
    weight,
    ...own.slice(-1),
  ]) as Conditions
}

function ofStage(conditions: Layer, stage: Stage, stagesHere: ReadonlySet<Stage>): Layer {
  const kept: Record<string, unknown> = {}
  for (const [key, value] of Object.entries(conditions)) {
    const keyStage = isVariable(key) ? bounds[key].stage : undefined
    if (keyStage === undefined || keyStage === stage || !stagesHere.has(keyStage)) kept[key] = value
  }
  return kept
}

/** From the first parent down to the skein itself. */
function lineOf(skein: SkeinSeen, { skeins }: Histories): SkeinSeen[] {
  const line = [skein]
  const seen = new Set([skein.id])
  for (let parent = skein.cutFromId; parent !== null && !seen.has(parent); ) {
    seen.add(parent)
    const it = skeins.get(parent)
    if (!it) break
    line.unshift(it)
    parent = it.cutFromId
  }
  return line
}
