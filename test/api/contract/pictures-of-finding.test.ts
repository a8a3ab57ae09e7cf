import { expect, test } from 'vitest'
import type { Finding } from '#api/contract/finding.ts'
import { ladderOf } from '#api/contract/pictures-of-finding.ts'

const level = (id: string, position: number, isReference: boolean) => ({
  id,
  position,
  label: id,
  value: position,
  isReference,
  tick: `${position} min`,
  words: `${position} minutes`,
  mean: 1,
  lower: 0.5,
  upper: 1.5,
})

test.each([
  [1.25, 'margin: 1.25 above the mean of 75 minutes'],
  [1, 'margin: 1.0 above the mean of 75 minutes'],
])('a margin of %d is printed on the picture as it was locked', (margin, label) => {
  const finding = {
    factor: { id: 'f', key: 'steamTime', label: 'Steam time', unit: 'min', kind: 'number', stage: 'set' },
    outcome: { key: 'dE00', label: 'Loss', unit: 'ΔE00', wear: { W2: 3 }, wearInWords: 'three washes' },
    verdict: { levelId: null, headline: '', lead: '', window: null },
    rule: {
      confidence: 0.95,
      conditions: [
        { outcome: 'dE00', wear: { W2: 3 }, against: 'reference', question: 'no-worse', end: 'low', margin },
      ],
    },
    levels: [level('a', 35, false), level('b', 75, true)],
    skeins: [],
    sessions: [],
    steps: [],
    noise: null,
  }
  // Only what a picture is drawn from.
  expect(ladderOf(finding as object as Finding)?.margin?.label).toBe(label)
})
