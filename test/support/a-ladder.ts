import { readFileSync } from 'node:fs'
import type { Client } from './client.ts'

/** The text of one of the sample trials. */
export function storyText(file: string): string {
  return readFileSync(new URL(`../../db/sample-trials/${file}`, import.meta.url), 'utf8')
}

/** The rule of the steam-time ladder: margin 1.0 against 75 minutes after three warm hand washes, and its limits. */
export const ladderConditions = [
  {
    outcome: 'dE00',
    wear: { W2: 3 },
    end: 'low',
    against: 'reference',
    statistic: 'upper limit',
    margin: 1,
    direction: 'smaller is better',
  },
  {
    outcome: 'staining',
    fibre: 'wool',
    wear: { W2: 3 },
    end: 'low',
    against: 'none',
    statistic: 'every unit',
    atLeast: 4,
    direction: 'larger is better',
  },
  {
    outcome: 'rinses to 4',
    wear: {},
    end: 'low',
    against: 'none',
    statistic: 'every unit',
    atMost: 4,
    direction: 'smaller is better',
  },
  {
    outcome: 'felting',
    wear: {},
    end: 'high',
    against: 'none',
    statistic: 'every unit',
    atMost: 2,
    direction: 'smaller is better',
  },
]

/** Starts a ladder of one’s own through the API: trial, factor, locked rule. */
export async function startLadder(
  client: Client,
  {
    times = [0, 10, 20, 35, 50, 75],
    plannedSessions = 4,
    conditions = ladderConditions,
    locked = true,
  }: { times?: number[]; plannedSessions?: number; conditions?: unknown[]; locked?: boolean } = {},
): Promise<string> {
  const trial = await client.post('/api/trials', {
    title: 'Steam, teal',
    question: 'How short can steaming be?',
    pattern: 'P1',
  })
  const id: string = trial.body.id
  await client.post(`/api/trials/${id}/factors`, {
    key: 'steamTime',
    levels: times.map((time) => ({ label: String(time), value: time })),
  })
  await client.post(`/api/trials/${id}/rules`, { conditions, plannedSessions })
  if (locked) await client.post(`/api/trials/${id}/rules/1/lock`)
  return id
}

/** The dark twin of the ladder, read again on the four days: 0.2, 0.4, 0.3, 0.3. */
export async function readDarkTwin(client: Client, trialId: string): Promise<void> {
  const twin = await client.post(`/api/trials/${trialId}/skeins`, {
    code: 'dark twin',
    role: 'dark twin',
    status: 'done',
  })
  for (const [i, value] of [0.2, 0.4, 0.3, 0.3].entries()) {
    const sitting = await client.post('/api/sittings', {
      trialId,
      method: 'instrument',
      label: `twin, day ${i + 1}`,
    })
    await client.post(`/api/trials/${trialId}/outcomes`, {
      kind: 'dE00',
      skeinId: twin.body.id,
      value,
      sittingId: sitting.body.id,
    })
  }
}
