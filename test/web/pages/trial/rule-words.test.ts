import { expect, test } from 'vitest'
import { ruleLine } from '#web/pages/trial/rule-words.ts'
import { partOf } from '#web/pages/trial/trial-parts.ts'

const zone = { timeZone: 'UTC' }
const locked = { edition: 1, lockedAt: '2026-02-24T09:12:00Z', reason: null }

test('a rule locked while nothing is read was locked before the first reading', () => {
  expect(ruleLine([locked], null, zone)).toBe('Rule locked 24 February 2026, 9:12, before the first reading.')
})

test('a rule locked later than a result says so', () => {
  expect(ruleLine([locked], '2026-02-20T10:00:00Z', zone)).toContain('after the first reading')
  expect(ruleLine([locked], '2026-02-25T10:00:00Z', zone)).toContain('before the first reading')
})

test('a later edition shows its reason, and a draft that it is not locked', () => {
  const second = { edition: 2, lockedAt: '2026-03-01T08:00:00Z', reason: 'two more sessions' }
  const draft = { edition: 3, lockedAt: null, reason: 'a smaller margin' }
  expect(ruleLine([locked, second, draft], null, zone)).toBe(
    'Rule locked 1 March 2026, 8:00, before the first reading. Edition 2: two more sessions. Edition 3 is written and not locked.',
  )
})

test('without results a trial opens at its plan, with them at its findings', () => {
  expect([partOf(undefined, { results: 0 }), partOf(undefined, { results: 3 })]).toEqual(['plan', 'findings'])
  expect(partOf('evidence', { results: 0 })).toBe('evidence')
  expect(partOf('nowhere', { results: 3 })).toBe('findings')
})
