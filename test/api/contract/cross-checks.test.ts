import { expect, test } from 'vitest'
import { crossChecks, doubtsAbout } from '#api/contract/cross-checks.ts'

test('each doubtful value is asked about at its place', () => {
  expect(
    doubtsAbout({ acid: 150, hold: 30, peakTemp: { entered: { amount: 210, unit: '°F' }, value: 98.9 } }),
  ).toEqual([
    { pointer: '#/acid', detail: 'Vinegar 150 mL per 100 g is three times the usual. Keep it?' },
    {
      pointer: '#/peakTemp',
      detail: 'Peak temperature 98.9 °C (210 °F) is above the usual 80–96 °C (176–205 °F). Keep it?',
    },
  ])
})

test('what is not recorded is neither doubted nor checked', () => {
  expect(doubtsAbout({ acid: null })).toEqual([])
  expect(crossChecks({ acid: null, peakTemp: null })).toEqual({ faults: [], doubts: [] })
})

test('an open pot is no hotter than a degree above boiling, where it stands', () => {
  expect(crossChecks({ peakTemp: 101 }).faults).toEqual([])
  expect(crossChecks({ peakTemp: 102 }).faults).toEqual([
    {
      pointer: '#/peakTemp',
      detail:
        'Water boils at 100 °C (212 °F): 102 °C (216 °F) needs a vessel made for pressure, used by its manual. Never a closed jar or pot.',
    },
  ])
  expect(crossChecks({ peakTemp: 97, altitude: 1500 }).faults).toHaveLength(1)
  expect(crossChecks({ peakTemp: 120, pressureVessel: true }).faults).toEqual([])
})

test.each([
  [100, 1, 1, undefined],
  [105, 1, 1, undefined],
  [106, 1, 1, 'doubt'],
  [120, 1, 1, 'doubt'],
  [121, 1, 1, 'fault'],
  [79, 1, 1, 'fault'],
  [0, 1, 0, undefined],
  [10, 1, 0, 'fault'],
])('%d mL of %d %% stock and %d g of dye: %s', (stockVolume, stockStrength, dyeMass, found) => {
  const { faults, doubts } = crossChecks({ stockVolume, stockStrength, dyeMass })
  expect(faults).toHaveLength(found === 'fault' ? 1 : 0)
  expect(doubts).toHaveLength(found === 'doubt' ? 1 : 0)
})

test('clear water at the first rinse of a deep shade without acid is asked about', () => {
  expect(crossChecks({ clarity: 5, depth: 2, acid: 0 }).doubts).toHaveLength(1)
  expect(crossChecks({ clarity: 5, depth: 2, acid: 0, citric: 2 }).doubts).toEqual([])
  // Acid not recorded is not the same as no acid.
  expect(crossChecks({ clarity: 5, depth: 2 }).doubts).toEqual([])
})

test('weights, ratios and temperatures that do not agree are asked about', () => {
  expect(crossChecks({ bathVolume: 4, fibreMass: 100, liquorRatio: 30 }).doubts).toEqual([
    { pointer: '#/bathVolume', detail: '100 g at 30 mL/g is 3 L. Keep both?' },
  ])
  expect(crossChecks({ dyeMass: 3, fibreMass: 100, depth: 2 }).doubts).toEqual([
    { pointer: '#/dyeMass', detail: '100 g at 2 % is 2 g of dye. Keep both?' },
  ])
  expect(crossChecks({ startTemp: 60, peakTemp: 50 }).doubts).toHaveLength(1)
})
