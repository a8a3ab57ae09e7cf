import { expect, test } from 'vitest'
import { patternPlans } from '#api/contract/patterns.ts'
import type { Rule } from '#api/contract/trial.ts'
import {
  askedAs,
  differs,
  fieldOfPointer,
  type RuleDraft,
  ruleDraft,
  sentRule,
} from '#web/pages/trial/rule-draft.ts'

const typed = (draft: RuleDraft, outcome: string, text: string): RuleDraft => {
  const field = draft.fields.find(({ condition }) => condition.outcome === outcome)
  return { ...draft, typed: { ...draft.typed, [field?.id ?? '']: text } }
}
const kept = (draft: RuleDraft, edition = 1): Rule => {
  const { conditions, method, confidence } = sentRule(draft, { plannedSessions: 4 })
  return {
    id: '00000000-0000-4000-8000-000000000000',
    trialId: '00000000-0000-4000-8000-000000000001',
    version: 1,
    createdAt: '2026-02-24T09:00:00Z',
    edition,
    conditions: conditions.map((it) => ({ ...it })),
    method,
    plannedSessions: 4,
    looks: 1,
    confidence: Number(confidence),
    lockedAt: null,
    reason: null,
  }
}

test('the ladder of times begins with margin 1.0, staining 4, rinses 4, felting 2 after three warm hand washes', () => {
  const draft = ruleDraft('P1', undefined)
  const said = draft.fields.map(({ label, id, unit }) => `${label} ${draft.typed[id]} ${unit}`)
  expect(said).toEqual([
    'Margin 1.0 ΔE00',
    'Worst staining 4 or better',
    'Rinses 4 or fewer',
    'Felting 2 or less',
  ])
  expect([draft.wearAmount, draft.wearAxis, draft.confidence]).toEqual(['3', 'W2', '95'])
})

test('the acid ladder names dye left and the lightness between neighbours, and no wear', () => {
  const draft = ruleDraft('P2', undefined)
  expect(sentRule(draft, { plannedSessions: 3 }).conditions).toEqual([
    {
      outcome: 'dye left',
      wear: {},
      end: 'low',
      against: 'none',
      question: 'within-limit',
      direction: 'smaller is better',
      atMost: 6,
    },
    {
      outcome: 'lightness',
      wear: {},
      end: 'low',
      against: 'next level',
      question: 'within-limit',
      direction: 'smaller is better',
      margin: 1,
    },
  ])
})

test('a blank limit is left out, a blank margin is sent without its number for the server to ask for', () => {
  const blank = typed(typed(ruleDraft('P1', undefined), 'felting', ' '), 'dE00', '')
  const { conditions } = sentRule(blank, { plannedSessions: 4 })
  expect(conditions.map(({ outcome }) => outcome)).toEqual(['dE00', 'staining', 'rinses to 4'])
  expect(conditions[0]).not.toHaveProperty('margin')
})

test('a fault of the server is found at its field though blank limits were not sent', () => {
  const blank = typed(ruleDraft('P1', undefined), 'staining', '')
  expect(fieldOfPointer(blank, '#/conditions/1/atMost')?.condition.outcome).toBe('rinses to 4')
})

test('another wear moves every condition of the old one and leaves what was set before any wear', () => {
  const draft = { ...ruleDraft('P1', undefined), wearAmount: '5', wearAxis: 'W4' }
  const { conditions } = sentRule(draft, { plannedSessions: 4 })
  expect(conditions.map(({ wear }) => wear)).toEqual([{ W4: 5 }, { W4: 5 }, {}, {}])
})

test('a half grade is said and read as “3-4”', () => {
  const draft = typed(ruleDraft('P1', undefined), 'staining', '3-4')
  const again = ruleDraft('P1', kept(draft))
  expect(sentRule(again, { plannedSessions: 4 }).conditions[1]).toMatchObject({ atLeast: 3.5 })
  expect(Object.values(again.typed)).toContain('3-4')
})

test('a kept rule fills the form so that nothing is changed, and a changed figure is', () => {
  const rule = kept(ruleDraft('P1', undefined))
  const again = ruleDraft('P1', rule)
  expect(differs(sentRule(again, { plannedSessions: 4 }), rule)).toBe(false)
  expect(differs(sentRule(again, { plannedSessions: 6 }), rule)).toBe(true)
  expect(differs(sentRule(typed(again, 'dE00', '0,8'), { plannedSessions: 4 }), rule)).toBe(true)
})

test('a limit that was left out is offered again, blank', () => {
  const without = ruleDraft('P1', kept(typed(ruleDraft('P1', undefined), 'felting', '')))
  const felting = without.fields.find(({ condition }) => condition.outcome === 'felting')
  expect(without.typed[felting?.id ?? '']).toBe('')
})

test('a rule of worst lots keeps each wear of its own', () => {
  const { conditions } = sentRule(ruleDraft('P3', undefined), { plannedSessions: 3 })
  expect(conditions.map(({ wear }) => wear)).toEqual([{ W2: 5 }, { W2: 5 }, { W2: 5 }, { W5: 1 }])
  expect(conditions.every(({ atLeast }) => atLeast === 4)).toBe(true)
})

test('a light card asks for blue wool 4 or better, or its open halves against the covered ones', () => {
  const draft = ruleDraft('P5', undefined)
  expect(sentRule(draft, { plannedSessions: 1 }).conditions).toMatchObject([
    { question: 'light', wear: { 'X1 days': 70 }, atLeast: 4 },
  ])
  const halves = sentRule(askedAs(draft, draft.asked[0]?.key ?? '', 'open-against-covered'), {
    plannedSessions: 1,
  }).conditions
  expect(halves).toMatchObject([{ question: 'open-against-covered', wear: { 'X1 days': 70 }, margin: 1 }])
  expect(halves[0]).not.toHaveProperty('atLeast')
  expect(halves[0]).not.toHaveProperty('statistic')
})

test('two ways are asked as good as, the same as or better than, and each sends its own number', () => {
  const draft = ruleDraft('P4', undefined)
  const [first] = draft.asked
  expect(first?.choice?.options.map(({ value }) => value)).toEqual(['no-worse', 'alike', 'better'])
  const sent = (it: RuleDraft) => sentRule(it, { plannedSessions: 6 }).conditions[0]
  expect(sent(draft)).toMatchObject({ question: 'no-worse', margin: 1 })
  const better = askedAs(draft, first?.key ?? '', 'better')
  expect(sent(better)).toMatchObject({ question: 'better', against: 'reference' })
  expect(sent(better)).not.toHaveProperty('margin')
  expect(sent(typed(better, 'dE00', '0.5'))).toMatchObject({ question: 'better', leastGain: 0.5 })
  const again = askedAs(typed(better, 'dE00', '0.5'), first?.key ?? '', 'alike')
  expect(sent(again)).toMatchObject({ question: 'alike', margin: 1 })
  expect(sent(again)).not.toHaveProperty('leastGain')
})

test('every number that the form shows of a pattern is one that the judging knows, and none is sent blank', () => {
  for (const { pattern } of patternPlans) {
    const draft = ruleDraft(pattern, undefined)
    for (const { question, ...condition } of sentRule(draft, { plannedSessions: 4 }).conditions) {
      expect(question, pattern).toBeDefined()
      const numbers = [condition.margin, condition.leastGain, condition.atLeast, condition.atMost]
      if (question !== 'better')
        expect(
          numbers.some((it) => it !== undefined),
          pattern,
        ).toBe(true)
    }
  }
})

test('staining that the acid ladder offers is asked after its washes, also once the rule is kept', () => {
  const again = ruleDraft('P2', kept(ruleDraft('P2', undefined)))
  const { conditions } = sentRule(typed(again, 'staining', '4'), { plannedSessions: 3 })
  expect(conditions.find(({ outcome }) => outcome === 'staining')).toMatchObject({
    question: 'within-limit',
    wear: { W2: 3 },
    atLeast: 4,
  })
})

test('an old rule is shown as it was written, and is not changed by opening it', () => {
  const rule = kept(ruleDraft('P1', undefined))
  const old: Rule = {
    ...rule,
    conditions: rule.conditions.map(({ question, ...it }) => ({
      ...it,
      statistic: question === 'no-worse' ? 'upper limit' : 'every unit',
    })),
  }
  expect(differs(sentRule(ruleDraft('P1', old), { plannedSessions: 4 }), old)).toBe(false)
})
