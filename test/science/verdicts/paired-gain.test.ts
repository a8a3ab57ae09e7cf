import { expect, test } from 'vitest'
import type { LevelRow } from '#api/science/verdicts/level-rows.ts'
import { pairedGain } from '#api/science/verdicts/paired-gain.ts'
import { figureIn, numberIn, storyRows } from '#test/support/story-rows.ts'

const benches: LevelRow[] = storyRows('class-separation.csv').map((row) => ({
  level: row.schedule ?? '',
  block: row.bench,
  value: numberIn(row, 'spread_dE00'),
}))
const remedies = ['cold_water', 'cold_vinegar', 'hot_detergent_60C', 'reheat_acid_85C']
const rescue: LevelRow[] = storyRows('bleeding-rescue.csv').flatMap((row) =>
  remedies.map((remedy) => ({ level: remedy, block: row.skein, value: figureIn(row, remedy) })),
)

// The intervals stand beside the invented stories; they are plain t intervals of paired differences.
test('two doses spread the colour more than all at the start, at all eight benches', () => {
  const gains = pairedGain(benches, { control: 'all at start' })
  const two = gains.find((it) => it.level === 'two doses')
  expect(two).toMatchObject({ n: 8, verdict: 'holds' })
  expect([two?.difference, two?.lower, two?.upper].map((it) => it?.toFixed(1))).toEqual(['7.5', '5.6', '9.4'])
})

test('four doses against two are compared at the seven benches that have both', () => {
  const [four] = pairedGain(benches, { control: 'two doses' }).filter((it) => it.level === 'four doses')
  expect(four?.n).toBe(7)
  expect([four?.difference, four?.lower, four?.upper].map((it) => it?.toFixed(1))).toEqual([
    '5.1',
    '2.3',
    '7.8',
  ])
})

test.each([
  ['cold_vinegar', ['-0.2', '-0.9', '0.6'], 'not-settled'],
  ['hot_detergent_60C', ['-7.8', '-9.3', '-6.3'], 'holds'],
  ['reheat_acid_85C', ['-8.7', '-10.0', '-7.5'], 'holds'],
])('%s against plain water, skein by skein', (remedy, figures, verdict) => {
  const gains = pairedGain(rescue, { control: 'cold_water', direction: 'smaller-is-better' })
  const gain = gains.find((it) => it.level === remedy)
  expect(gain).toMatchObject({ n: 8, df: 7, verdict })
  expect([gain?.difference, gain?.lower, gain?.upper].map((it) => it?.toFixed(1))).toEqual(figures)
})

const bench = (n: number, control: number, other: number, stain = 5): LevelRow[] => [
  { level: 'usual', block: n, value: control },
  { level: 'new', block: n, value: other, side: { stain } },
]

test('a gain does not hold when staining breaks its limit at one bench', () => {
  const rows = [...bench(1, 8, 15), ...bench(2, 9, 17, 3.5), ...bench(3, 7, 15)]
  const limits = [{ side: 'stain', atLeast: 4 }]
  expect(pairedGain(rows, { control: 'usual', limits })[0]?.verdict).toBe('does-not-hold')
  expect(pairedGain(rows, { control: 'usual' })[0]?.verdict).toBe('holds')
})

test('a gain below what is worth having does not hold', () => {
  const rows = [...bench(1, 8, 8.5), ...bench(2, 9, 9.4), ...bench(3, 7, 7.6)]
  expect(pairedGain(rows, { control: 'usual', worth: 3 })[0]?.verdict).toBe('does-not-hold')
})

test('several remedies against one control are corrected for their number', () => {
  const gains = pairedGain(rescue, { control: 'cold_water', direction: 'smaller-is-better' })
  const vinegar = gains.find((it) => it.level === 'cold_vinegar')
  const hot = gains.find((it) => it.level === 'hot_detergent_60C')
  // Holm (1979): the largest p stays as it is, the middle one of three is doubled
  expect(vinegar?.pAdjusted).toBe(vinegar?.p)
  expect((hot?.pAdjusted ?? 0) / (hot?.p ?? 1)).toBeCloseTo(2, 12)
})

test('equal gains at every bench are asked about, not believed', () => {
  const rows = [...bench(1, 8, 9), ...bench(2, 9, 10), ...bench(3, 7, 8)]
  expect(pairedGain(rows, { control: 'usual' })[0]).toMatchObject({
    verdict: 'not-settled',
    lower: undefined,
  })
})
