import { linearRegression } from 'simple-statistics'
import { powerOfPlan } from '#api/science/design/power-of-plan.ts'
import { seededRandom } from '#api/science/design/seeded-random.ts'
import { fitModel } from '#api/science/statistics/model.ts'
import { modelOfBlocks } from '#api/science/statistics/model-of-blocks.ts'
import { straightLine } from '#api/science/statistics/straight-line.ts'
import { leastLevelThatHolds } from '#api/science/verdicts/least-level-that-holds.ts'
import { printTimes, sideBySide } from './side-by-side.ts'

/**
 * The statistics that a page waits for. No library here has mixed models or the verdict, so beside each stands what
 * a user might take instead: a model without its random parts, the verdict one trial at a time, a line without limits.
 */
export function benchStatistics(): void {
  const random = seededRandom('bench')
  const blocks = Array.from({ length: 8 * 6 * 3 }, (_, i) => ({
    level: String([0, 10, 20, 35, 50, 75][i % 6]),
    block: `s${Math.floor(i / 18)}`,
    vessel: `v${Math.floor(i / 18)}-${i % 6}`,
    value: 1 + (i % 6) * 0.1 + random.normal() * 0.3,
  }))
  const rows = blocks.map(({ level, block, vessel, value }) => ({
    level: String(level),
    session: block,
    vessel,
    value,
  }))
  const mixed = {
    response: 'value',
    factors: ['level'],
    randomIntercepts: ['session', 'vessel'],
    meansOf: ['level'],
  }
  const fixed = { response: 'value', factors: ['level', 'session'], meansOf: ['level'] }
  printTimes(
    sideBySide([
      { name: 'two random intercepts', things: 1, work: () => fitModel(mixed, rows) },
      { name: 'sessions as fixed effects', things: 1, work: () => fitModel(fixed, rows) },
      { name: 'the verdict’s own model', things: 1, work: () => modelOfBlocks(blocks, { reference: '75' }) },
    ]),
  )

  const many = Array.from({ length: 20_000 }, (_, i) => ({
    steam: String(i % 6),
    fibre: String(i % 4),
    x: random.normal(),
    y: (i % 6) * 0.2 + random.normal(),
  }))
  const points = many.map((row) => [row.x, row.y])
  printTimes(
    sideBySide([
      {
        name: '20,000 rows, two factors, all interactions',
        things: 1,
        work: () =>
          fitModel(
            { response: 'y', factors: ['steam', 'fibre'], covariates: ['x'], interactions: 'all' },
            many,
          ),
      },
      {
        name: 'a straight line with its limits',
        things: 1,
        work: () =>
          straightLine(
            many.map((row) => row.x),
            many.map((row) => row.y),
          ),
      },
      { name: 'simple-statistics, a line alone', things: 1, work: () => linearRegression(points) },
    ]),
  )

  const truth = { reference: 1, extras: [0.5], sd: 0.5, noiseSd: 0.13 }
  const one = blocks.slice(0, 8).map(({ value }, i) => ({
    level: i % 2 ? 75 : 35,
    block: `${i >> 1}`,
    vessel: `${i}`,
    value,
  }))
  printTimes(
    sideBySide([
      {
        name: 'one of 10,000 made-up trials of a plan',
        things: 10_000,
        work: () => powerOfPlan({ looks: [4], margin: 1 }, truth, { trials: 10_000, seed: 1 }),
      },
      {
        name: 'the least level, trial by trial',
        things: 1,
        work: () => leastLevelThatHolds(one, { margin: 1 }),
      },
    ]),
  )
}
