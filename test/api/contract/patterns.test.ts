import { describe, expect, test } from 'vitest'
import { patternPlans } from '#api/contract/patterns.ts'
import { questionOf } from '#api/contract/question.ts'

describe.each(patternPlans)('$pattern', ({ rule, bench }) => {
  test('names what each of its conditions and offers asks', () => {
    for (const condition of [...rule.conditions, ...rule.offers]) expect(condition.question).toBeDefined()
  })

  test('has a number for everything that it asks, but for a gain', () => {
    for (const condition of rule.conditions) {
      if (questionOf(condition) === 'better') continue
      expect(condition.margin ?? condition.atLeast ?? condition.atMost).toBeGreaterThan(0)
    }
  })

  test('plans enough to say so: three of what it counts, or one window with three cards', () => {
    expect(bench.sessions * bench.vesselsPerLevel).toBeGreaterThanOrEqual(3)
  })
})
