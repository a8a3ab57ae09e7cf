import { expect, test } from 'vitest'
import { batchToStandard } from '#api/science/verdicts/batch-to-standard.ts'
import { figureIn, storyRows } from '#test/support/story-rows.ts'

const rows = storyRows('scale-up.csv')
const skeinsOf = (batch: string) =>
  rows
    .filter((row) => row.batch === batch)
    .map((row) => ({ L: figureIn(row, 'L'), a: figureIn(row, 'a'), b: figureIn(row, 'b') }))
const standard = skeinsOf('sample 50 g')
const batch = (name: string) => ({ batch: name, skeins: skeinsOf(name) })

// What the invented story was made to show
test('one crowded pot is 2.0 off the sample, its worst skein 3.6, and does not hold', () => {
  const { verdict, batches } = batchToStandard([batch('1200 g one pot')], { standard })
  expect(verdict).toBe('does-not-hold')
  const [pot] = batches
  expect([pot?.toStandard, pot?.mcdm, pot?.worstSkein].map((it) => it?.toFixed(1))).toEqual([
    '2.0',
    '1.0',
    '3.6',
  ])
})

test('three lots with room to swim come within 0.5 of it and hold', () => {
  const lots = ['400 g lot 1', '400 g lot 2', '400 g lot 3'].map(batch)
  const { verdict, batches, nextBatchUpTo } = batchToStandard(lots, { standard })
  expect(verdict).toBe('holds')
  expect(batches.map((it) => it.toStandard.toFixed(1))).toEqual(['0.5', '0.3', '0.5'])
  expect(Math.max(...batches.map((it) => it.worstSkein)).toFixed(1)).toBe('1.0')
  // Mean + t(0.95; 2) · s · √(1 + 1/3), with t = 2.920 from any printed table
  const far = batches.map((it) => it.toStandard)
  const mean = far.reduce((sum, it) => sum + it, 0) / 3
  const s = Math.sqrt(far.reduce((sum, it) => sum + (it - mean) ** 2, 0) / 2)
  expect(nextBatchUpTo).toBeCloseTo(mean + 2.92 * s * Math.sqrt(4 / 3), 3)
})

test('two good batches say nothing about the next one', () => {
  const { verdict } = batchToStandard(['400 g lot 1', '400 g lot 2'].map(batch), { standard })
  expect(verdict).toBe('not-settled')
})

test('the same lot has the narrower limit', () => {
  const off = [1, 2, 3].map((n) => ({ batch: String(n), skeins: [{ L: 39.5, a: 20.7, b: -8 }] }))
  expect(batchToStandard(off, { standard, limit: 2 }).verdict).toBe('holds')
  expect(batchToStandard(off, { standard, limit: 1 }).verdict).toBe('does-not-hold')
})
