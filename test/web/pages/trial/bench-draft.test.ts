import { expect, test } from 'vitest'
import { benchOfPattern } from '#api/contract/bench-of-pattern.ts'
import { benchDraft, benchSizes } from '#web/pages/trial/bench-draft.ts'

const nothing = { seed: null, results: 0, firstResultAt: null, balance: [], sessions: [] }
const ladder = benchOfPattern('P1', 'set')

test('a new ladder begins with four sessions, one packet a level, one skein in each', () => {
  expect(benchDraft(ladder, { plan: nothing, rule: undefined, levels: 6 })).toEqual({
    sessions: '4',
    vesselsPerLevel: '1',
    skeinsPerVessel: '1',
  })
})

test('sessions that an address asks for are planned', () => {
  expect(benchDraft(ladder, { plan: nothing, rule: undefined, levels: 6, asked: 6 }).sessions).toBe('6')
})

test('figures that are none are named at their field', () => {
  const draft = { sessions: '0', vesselsPerLevel: '1', skeinsPerVessel: 'two' }
  expect(benchSizes(draft)).toEqual({
    sizes: undefined,
    faults: { sessions: 'A whole number from 1 to 50.', skeinsPerVessel: 'A whole number from 1 to 20.' },
  })
})

test('two ways of steaming stand in packets, two ways of dyeing in jars', () => {
  expect([benchOfPattern('P4', 'set').vessel.many, benchOfPattern('P4', 'dye').vessel.many]).toEqual([
    'packets',
    'jars',
  ])
})
