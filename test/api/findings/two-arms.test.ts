import { expect, test } from 'vitest'
import { clientOf } from '#test/support/client.ts'
import { emptyDatabase } from '#test/support/empty-database.ts'

/** Losses of a usual way and of a shortcut in four sessions: the shortcut loses 0.2, 0.1, 0.4 and 0.1 more. */
const losses = [
  [0.8, 1.0],
  [1.0, 1.1],
  [0.9, 1.3],
  [1.1, 1.2],
]
const wear = { W2: 3 }

async function twoArms(levels: readonly { label: string; isReference: boolean }[]) {
  const client = clientOf(await emptyDatabase())
  const trial = await client.post('/api/trials', {
    title: 'Two ways',
    question: 'Is the shortcut as good?',
    pattern: 'P4',
  })
  const id: string = trial.body.id
  await client.post(`/api/trials/${id}/factors`, { key: 'way', kind: 'category', stage: 'dye', levels })
  await client.post(`/api/trials/${id}/rules`, {
    conditions: [
      {
        outcome: 'dE00',
        wear,
        end: 'low',
        against: 'reference',
        statistic: 'upper limit',
        margin: 1,
        direction: 'smaller is better',
      },
    ],
    plannedSessions: 4,
  })
  await client.post(`/api/trials/${id}/rules/1/lock`)
  await client.post(`/api/trials/${id}/plan/draw`, {
    sessions: 4,
    vesselsPerLevel: 1,
    skeinsPerVessel: 1,
    twins: false,
    seed: 5,
  })
  const plan = await client.get(`/api/trials/${id}/plan`)
  for (const [place, session] of plan.body.sessions.entries())
    for (const vessel of session.vessels) {
      const value = losses[place]?.[vessel.levels[0].label === 'usual' ? 0 : 1]
      const skeinId = vessel.skeins[0].id
      const kept = await client.post(`/api/trials/${id}/outcomes`, { kind: 'dE00', skeinId, value, wear })
      expect(kept.status).toBe(201)
    }
  return (await client.get(`/api/trials/${id}/findings`)).body
}

const usual = { label: 'usual', isReference: true }
const shortcut = { label: 'shortcut', isReference: false }

test.each([
  ['first', [usual, shortcut]],
  ['last', [shortcut, usual]],
])('of two ways the other is held against the reference, also where that stands %s', async (_, levels) => {
  const { verdict } = await twoArms(levels)
  // Mean 0.2, standard deviation √(0.06/3), t of 95 % with 3 degrees of freedom 2.353 (any printed table of t):
  // 0.2 ± 2.353 × 0.1414 / 2 is 0.034 to 0.366.
  // The losses were typed in without their L*a*b* and no twin was read again, so nothing can be said to be as good.
  expect(verdict.answer).toBe('not-settled')
  expect(verdict.headline).toContain('the measuring error is not known')
  expect(verdict.lead).toMatch(/by 0\.03 to 0\.37 ΔE00 more/)
  expect(verdict.counts).toContain('8 skeins from 8 jars in 4 sessions')
})
