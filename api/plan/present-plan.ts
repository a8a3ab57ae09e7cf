import type { DrawnPlan, DrawnVessel } from '#api/contract/plan.ts'
import { groupBy } from '#api/science/group-by.ts'
import type { benchOf, DrawnLevelRow } from '#db/plans.ts'
import { balanceInWords } from './balance-words.ts'
import { skeinsStoodAt, vesselsStoodAt } from './stood-at.ts'

type Bench = Awaited<ReturnType<typeof benchOf>>

/** The bench as it was drawn: of each session the vessels that were given a level, or hold skeins that were. */
export function presentPlan(bench: Bench, seed: number | null): DrawnPlan {
  const { sessions, vessels, skeins, given, results, first } = bench
  const ofVessel = groupBy(given, (it) => it.vesselId)
  const ofSkein = groupBy(given, (it) => it.skeinId)
  const inside = groupBy(skeins, (it) => it.vesselId)
  const drawn = vessels.flatMap((vessel): (DrawnVessel & { sessionId: string })[] => {
    const levels = ofVessel.get(vessel.id) ?? []
    const pieces = inside.get(vessel.id) ?? []
    const isBench = levels.length > 0 || pieces.some((it) => ofSkein.has(it.given ?? it.id))
    if (!isBench) return []
    return [
      {
        sessionId: vessel.sessionId,
        id: vessel.id,
        label: vessel.label,
        kind: vessel.kind,
        place: vessel.place,
        order: vessel.drawnOrder,
        levels: levels.map((it) => ({ levelId: it.levelId, label: saidLevel(it) })),
        skeins: pieces.map(({ id, code, role, place, given: givenId }) => ({
          id,
          code,
          role,
          place,
          level: (ofSkein.get(givenId ?? id) ?? []).map(saidLevel).join(', ') || null,
        })),
      },
    ]
  })
  const bySession = groupBy(drawn, (it) => it.sessionId)
  return {
    seed,
    results,
    firstResultAt: first?.toISOString() ?? null,
    // Places that came with a table were not drawn here, and nothing is promised of them.
    balance: seed === null ? [] : balanceOf(bench),
    sessions: sessions.flatMap(({ id, label, kind, heldOn }) => {
      const here = bySession.get(id)
      if (!here) return []
      const places = here
        .toSorted((a, b) => Number(a.place ?? 0) - Number(b.place ?? 0))
        .map(({ sessionId: _, ...vessel }) => vessel)
      return [{ id, label, kind, heldOn, vessels: places }]
    }),
  }
}

function balanceOf(bench: Bench): string[] {
  const vessels = vesselsStoodAt(bench)
  const stood = vessels.length > 0 ? vessels : skeinsStoodAt(bench)
  const words = [balanceInWords(stood, 'place'), balanceInWords(stood, 'turn')]
  return words.filter((it) => it !== undefined)
}

function saidLevel({ label, unit }: DrawnLevelRow): string {
  return unit === null || unit === '' || !/\d$/.test(label) ? label : `${label} ${unit}`
}
