import { expect, test } from 'vitest'
import { type DeltaE, deltaE, minutes } from '#api/science/units.ts'
import { type SteamedSkein, shortestSafeSteam } from '#api/science/verdicts/shortest-safe-steam.ts'
import { steamLadder, twinNoise } from '#test/support/steam-ladder.ts'

const margin: DeltaE = deltaE(1)
const steamed = (time: number, ...losses: number[]): SteamedSkein[] =>
  losses.map((loss, session) => ({ session, steamed: minutes(time), washLoss: deltaE(loss) }))

test('a short time that happens to pass does not count below one that failed', () => {
  const skeins = [...steamed(10, 1, 1.1, 0.9), ...steamed(30, 4, 4.2, 4.1), ...steamed(60, 1, 1, 1.1)]
  expect(shortestSafeSteam(skeins, { margin })).toMatchObject({ kind: 'does-not-hold', failed: 30 })
})

test('the sample ladder holds from 35 minutes up to 35 minutes', () => {
  // domain, section 7
  const skeins = steamLadder().map(({ level, session, value, side }) => ({
    session,
    steamed: minutes(Number(level)),
    washLoss: deltaE(value ?? Number.NaN),
    staining: side?.stain ?? 0,
    rinses: side?.rinses ?? 99,
    felting: side?.felt ?? 5,
  }))
  const limits = { stainingAtLeast: 4, rinsesAtMost: 4, feltingAtMost: 2 }
  const found = shortestSafeSteam(skeins, { margin, limits, noise: deltaE(twinNoise.rms) })
  expect(found).toMatchObject({ kind: 'holds', steam: 35, upTo: 35 })
  expect(found.kind === 'holds' && found.extraLossAtMost).toBeCloseTo(0.5, 2)
})

test('two sessions are not settled, and are counted', () => {
  const found = shortestSafeSteam([...steamed(30, 1, 1.1), ...steamed(60, 1, 1)], { margin })
  expect(found).toMatchObject({ kind: 'not-settled', sessions: 2 })
})
