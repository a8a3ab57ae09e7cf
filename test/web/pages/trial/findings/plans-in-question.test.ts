import { expect, test } from 'vitest'
import { type InQuestion, plansInQuestion } from '#web/pages/trial/findings/plans-in-question.ts'

function open(more: Partial<InQuestion['verdict']> = {}, sessions = 4): InQuestion {
  const verdict = {
    subjectId: 'a',
    sessionsIn: sessions,
    sessionsMore: 3,
    estimate: { value: 0, lower: -1, upper: 1, confidence: 0.9, margin: 0.7, unit: 'ΔE00' },
    ...more,
  }
  const level = { id: 'a', skeins: 2 * sessions, vessels: sessions, sessions }
  return { verdict, levels: [level], noise: null }
}

// t(0.95; 3) = 2.3534 and the 20 % point of chi-squared with 3 degrees of freedom 1.0052, from printed tables:
// half-width 1 of 4 sessions is an SD of 2 ÷ 2.3534 = 0.8498, whose upper 80 % limit is 0.8498 × √(3 ÷ 1.0052) = 1.468.
test('from four sessions on the spread is the upper 80 % limit of what was seen', () => {
  expect(plansInQuestion(open())?.later.sdOfDifferences).toBeCloseTo(1.468, 3)
})

test('with fewer sessions the spread is left to what is known from elsewhere', () => {
  expect(plansInQuestion(open({}, 3))?.later).not.toHaveProperty('sdOfDifferences')
})

test('skeins of one packet are planned as such, and the sessions are those that are in and those to come', () => {
  const plans = plansInQuestion(open())
  expect(plans?.now).toMatchObject({ sessions: 4, vesselsPerLevel: 1, skeinsPerVessel: 2, margin: 0.7 })
  expect(plans?.later.sessions).toBe(7)
})

test('nothing is tried where sessions settle nothing, or more than a plan may have', () => {
  expect(plansInQuestion(open({ sessionsMore: null }))).toBeUndefined()
  expect(plansInQuestion(open({ sessionsMore: 60 }))).toBeUndefined()
  expect(plansInQuestion(open({ estimate: null }))).toBeUndefined()
})
