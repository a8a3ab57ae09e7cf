import { expect, test } from 'vitest'
import { stepsOnRuler } from '#web/pages/trial/findings/steps-on-ruler.ts'

type Asked = Parameters<typeof stepsOnRuler>[0]
type Condition = NonNullable<Asked['rule']>['conditions'][number]

/** A finding of one arm beside the usual way, whose interval decides under this condition. */
function finding(condition: Partial<Condition>): Asked {
  const step = {
    label: '',
    n: 4,
    mean: null,
    extra: 0.1,
    lower: -0.4,
    upper: 0.6,
    netExtra: null,
    netUpper: null,
    limits: [],
    answer: null,
    afterStop: false,
    says: '',
  }
  return {
    steps: [
      { ...step, levelId: 'usual', reference: true, deciding: null },
      { ...step, levelId: 'short', reference: false, deciding: { value: 0.1, lower: -0.5, upper: 0.7 } },
    ],
    levels: [],
    verdict: null,
    rule: {
      id: '',
      version: 1,
      createdAt: '',
      trialId: '',
      edition: 1,
      conditions: [
        {
          outcome: 'dE00',
          wear: { W2: 3 },
          end: 'low',
          against: 'reference',
          direction: 'smaller is better',
          ...condition,
        },
      ],
      method: 'paired',
      plannedSessions: 4,
      looks: 1,
      confidence: 0.95,
      lockedAt: null,
      reason: null,
    },
  }
}

test('a rule of the first version is held against its margin, by the right end', () => {
  const ruler = stepsOnRuler(finding({ statistic: 'upper limit', margin: 0.8 }))
  expect(ruler).toMatchObject({ name: 'extra change', boundName: 'margin', bound: 0.8, bothSides: false })
})

test('a question without a statistic is held against its own bound', () => {
  expect(stepsOnRuler(finding({ question: 'no-worse', margin: 1 }))?.bound).toBe(1)
  const gain = stepsOnRuler(finding({ question: 'better', leastGain: 0.5, margin: 1 }))
  expect(gain).toMatchObject({ name: 'gain', boundName: 'least gain', bound: 0.5 })
  expect(gain?.says).toContain('the left end must stay over')
})

test('“the same as” of a change has a margin to both sides, of colours to one', () => {
  expect(stepsOnRuler(finding({ question: 'alike', margin: 1 }))?.bothSides).toBe(true)
  expect(stepsOnRuler(finding({ question: 'alike', margin: 1, wear: {} }))?.bothSides).toBe(false)
})

test('limits and blue wools have no ruler', () => {
  expect(stepsOnRuler(finding({ question: 'light', atLeast: 4, against: 'none' }))).toBeUndefined()
})
