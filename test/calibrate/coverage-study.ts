import { seededRandom } from '#api/science/design/seeded-random.ts'
import { studentTQuantile } from '#api/science/statistics/student-t.ts'
import { leastLevelThatHolds } from '#api/science/verdicts/least-level-that-holds.ts'
import type { LevelRow } from '#api/science/verdicts/level-rows.ts'
import { grid } from './grid-study.ts'

/** Pots as they are: three skeins share each, and half of all spread is the pot's. */
export const pots = { skeins: 3, sdPot: 0.25, sdSkein: 0.25, sdSession: 0.3 } as const

export type Coverage = {
  readonly sessions: number
  /** How often the two-sided 95 % interval of the extra loss holds the true one: by pots within sessions, as the verdict does. */
  readonly byPots: number
  /** The same with skeins taken as replicates and sessions forgotten: the naive analysis. */
  readonly bySkeins: number
  /** False "holds" at the boundary, true extra = margin, by both. */
  readonly falseByPots: number
  readonly falseBySkeins: number
}

/** The real verdict code on whole trials of one level against the reference, three skeins a pot. */
export function coverageStudy(trials: number, seed: number): Coverage[] {
  return grid.sessions.map((sessions) => {
    const random = seededRandom(`${seed} coverage ${sessions}`)
    const held = { byPots: 0, bySkeins: 0, falseByPots: 0, falseBySkeins: 0 }
    for (let trial = 0; trial < trials; trial++) {
      const rows: LevelRow[] = []
      for (let block = 0; block < sessions; block++) {
        const session = pots.sdSession * random.normal()
        for (const level of [0, 1]) {
          const pot = pots.sdPot * random.normal()
          for (let skein = 0; skein < pots.skeins; skein++)
            // The reference is level 1, the other loses exactly the margin of 1 more; both are far from 0.
            rows.push({
              level,
              block,
              value: 5 + (1 - level) + session + pot + pots.sdSkein * random.normal(),
            })
        }
      }
      // One-sided limits at 97.5 % are the ends of the two-sided 95 % interval.
      const [wide] = leastLevelThatHolds(rows, { margin: 1, confidence: 0.975 }).steps
      if (wide?.lower !== undefined && wide.upper !== undefined && wide.lower <= 1 && wide.upper >= 1)
        held.byPots++
      if (leastLevelThatHolds(rows, { margin: 1 }).verdict === 'holds') held.falseByPots++
      const naive = skeinsAsReplicates(rows)
      if (Math.abs(naive.difference - 1) <= naive.se * studentTQuantileAt(0.975, naive.df)) held.bySkeins++
      if (naive.difference + naive.se * studentTQuantileAt(0.95, naive.df) < 1) held.falseBySkeins++
    }
    return {
      sessions,
      byPots: held.byPots / trials,
      bySkeins: held.bySkeins / trials,
      falseByPots: held.falseByPots / trials,
      falseBySkeins: held.falseBySkeins / trials,
    }
  })
}

/** What a careless analysis does: every skein a replicate, differences of skeins within sessions as if each had its own pot. */
function skeinsAsReplicates(rows: readonly LevelRow[]): { difference: number; se: number; df: number } {
  const [low, high] = [0, 1].map((level) =>
    rows.filter((row) => row.level === level).map((row) => row.value ?? 0),
  )
  const differences = (low ?? []).map((value, i) => value - (high?.[i] ?? 0))
  const n = differences.length
  const difference = differences.reduce((sum, it) => sum + it, 0) / n
  const squares = differences.reduce((sum, it) => sum + (it - difference) ** 2, 0)
  return { difference, se: Math.sqrt(squares / (n - 1) / n), df: n - 1 }
}

const quantiles = new Map<string, number>()

function studentTQuantileAt(p: number, df: number): number {
  const key = `${p} ${df}`
  const known = quantiles.get(key) ?? studentTQuantile(p, df)
  quantiles.set(key, known)
  return known
}
