import { readFileSync, writeFileSync } from 'node:fs'
import { type ClaimCell, claimsStudy, mostFalse, worlds } from './claims-study.ts'

/**
 * How often does a claim hold that should not? `npm run calibrate:claims` puts made-up records through the claim itself
 * and keeps what it finds; `npm run calibrate:claims -- --check` makes a few again and compares them with what was kept.
 */
const kept = new URL('claims.json', import.meta.url)
const check = process.argv.includes('--check')
const [trials = check ? 200 : 400, seed = check ? 2 : 1] = process.argv
  .slice(2)
  .flatMap((it) => (it === '--check' ? [] : Number(it)))
if (!(Number.isInteger(trials) && trials >= 100 && Number.isInteger(seed))) {
  console.error('npm run calibrate:claims -- [--check] [trials a cell, 100 or more] [seed]')
  process.exit(2)
}

const started = performance.now()
const before: { trials: number; cells: ClaimCell[] } | undefined = check
  ? JSON.parse(readFileSync(kept, 'utf8'))
  : undefined
const cells = claimsStudy(trials, seed, check ? worlds.filter((_, place) => place % 4 === 0) : worlds)
const faults = cells.flatMap((cell) => {
  const words = inWords(cell)
  console.log(words)
  const tooOften = cell.extra === 1 && cell.holds > mostFalse(cell, trials) ? [`too often: ${words}`] : []
  const then = before?.cells.find((it) => inWords({ ...it, holds: 0 }) === inWords({ ...cell, holds: 0 }))
  if (!before) return tooOften
  if (!then) return [`not kept: ${words}`]
  // Two shares of separate samples: four standard errors, and never less than one trial.
  const share = (then.holds * before.trials + cell.holds * trials) / (before.trials + trials)
  const se = Math.sqrt(Math.max(share * (1 - share), 0.01) * (1 / before.trials + 1 / trials))
  return Math.abs(then.holds - cell.holds) > 4 * se ? [`was ${percent(then.holds)}: ${words}`] : []
})
console.log(
  `${trials} made-up trials a cell, seed ${seed}, ${((performance.now() - started) / 1000).toFixed(0)} s`,
)
console.log(faults.length === 0 ? 'As promised.' : `Not as promised:\n  ${faults.join('\n  ')}`)
if (!check)
  writeFileSync(
    kept,
    `${JSON.stringify({ command: `npm run calibrate:claims -- ${trials} ${seed}`, trials, seed, cells }, null, 2)}\n`,
  )
if (faults.length > 0) process.exitCode = 1

function inWords({
  sessions,
  floor,
  axes,
  sharedShift,
  beside,
  twins,
  reread,
  extra,
  holds,
}: ClaimCell): string {
  return `extra ${extra}, floor ${floor.toFixed(2)}, ${sessions} sessions, ${twins} twins read ${reread} times again, axes ${axes.join(':')}${sharedShift ? `, a shift shared by a sitting${beside ? '' : ', twins on other days'}` : ''}: holds in ${percent(holds)}`
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`
}
