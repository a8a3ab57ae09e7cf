import { expect, test } from 'vitest'
import { judgedTrial } from '#api/judging/judged-trial.ts'
import { judgeNoWorse } from '#api/judging/no-worse.ts'
import { noiseOf } from '#api/judging/noise.ts'
import { aReading } from '#test/support/a-reading.ts'
import { recordOf } from '#test/support/a-record.ts'
import { aCondition, askedOf } from '#test/support/asked-of.ts'

const wear = { W2: 3 }
const loss = aCondition({ question: 'no-worse', outcome: 'dE00', wear, against: 'reference', margin: 1 })

// By how much each skein became lighter, and what the meter added to every reading after the wash.
const lighter = { 30: [0.6, 0.9, 0.7, 0.8], 60: [0.5, 0.6, 0.4, 0.7] }
const added = 1.5

function trialOf(twins: number) {
  const skeins = ([30, 60] as const).flatMap((level) =>
    lighter[level].map((step, i) => ({
      code: `${level}-${i}`,
      level,
      session: `${i}`,
      after: 50 + step + added,
    })),
  )
  const record = recordOf({
    factors: [{ key: 'steamTime', stage: 'set', levels: [30, 60], reference: 60, unit: 'min' }],
    sessions: ['0', '1', '2', '3'],
    vessels: skeins.map(({ code, session }) => ({ label: `p ${code}`, stage: 'set' as const, session })),
    skeins: [
      ...skeins.map(({ code, level, after }) => ({
        code,
        in: [`p ${code}`],
        level: { steamTime: level },
        results: [{ kind: 'dE00', value: after - 50, wear, basis: 'own', by: [after - 50, 0, 0] as const }],
      })),
      ...Array.from({ length: twins }, (_, i) => ({ code: `t${i}`, role: 'twin' as const })),
    ],
  })
  const read = skeins.flatMap(({ code, after }) => [
    aReading({ skein: code, sitting: 'before', lab: [50, 0, 0], on: '2026-03-01' }),
    aReading({ skein: code, sitting: 'after', lab: [after, 0, 0], on: '2026-03-08', wear }),
  ])
  const twin = Array.from({ length: twins }, (_, i) => [
    aReading({ skein: `t${i}`, sitting: 'before', lab: [50, 0, 0], on: '2026-03-01' }),
    aReading({
      skein: `t${i}`,
      sitting: 'after',
      lab: [50 + added + (i % 2 ? 0.1 : -0.1), 0, 0],
      on: '2026-03-08',
    }),
  ]).flat()
  const colours = skeins.map(({ code, after }) => ({
    skeinId: `#${code}`,
    wear,
    l: after,
    a: 0,
    b: 0,
    readingsN: 1,
    spotsN: 5,
  }))
  return judgedTrial({ ...record, readings: [...read, ...twin], colours })
}

const answer = (twins: number) => {
  const trial = trialOf(twins)
  const [only] = judgeNoWorse(askedOf(trial, loss, { noise: noiseOf(trial, loss) }))
  if (!only) throw new Error('Nothing was answered.')
  return only
}

test('with four twins their shift is taken off every loss, and said', () => {
  const found = answer(4)
  // The mean of 0.6, 0.9, 0.7, 0.8, without the 1.5 that the meter added
  expect(found.table?.mean).toBeCloseTo(0.75, 2)
  expect(found.answer).toBe('holds')
  expect(found.method.join(' ')).toContain(
    'The mean shift of 4 twins (ΔL* 1.50, Δa* 0.00, Δb* 0.00) was taken off',
  )
})

test('with three it stays in the measuring error, which is then too large for anything to hold', () => {
  const found = answer(3)
  expect(found.table?.mean).toBeGreaterThan(2.1)
  expect(found).toMatchObject({ answer: 'not-settled' })
})
