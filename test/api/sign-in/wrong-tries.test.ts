import { expect, test } from 'vitest'
import { openSessions, sessionSeconds } from '#api/sign-in/sessions.ts'
import { countWrongTries } from '#api/sign-in/wrong-tries.ts'

const clock = () => {
  const time = { seconds: 0, now: () => time.seconds * 1000 }
  return time
}

test('an address waits twice as long each time, and after an hour without a try it begins anew', () => {
  const time = clock()
  const tries = countWrongTries(time.now)
  const waits: number[] = []
  while (waits.length < 6) {
    const wait = tries.begin('192.0.2.1')
    if (wait > 0) waits.push(wait)
    time.seconds += wait
  }
  expect(waits).toEqual([1, 2, 4, 8, 16, 32])
  time.seconds += 3600
  expect([tries.begin('192.0.2.1'), tries.begin('192.0.2.1')]).toEqual([0, 0])
})

test('many addresses together have fifty tries, and then one each six seconds', () => {
  const time = clock()
  const tries = countWrongTries(time.now)
  const waits = Array.from({ length: 60 }, (_, i) => tries.begin(`192.0.2.${i}`))
  expect(waits.filter((wait) => wait === 0)).toHaveLength(50)
  expect(waits.at(-1)).toBe(6)
  time.seconds += 6
  expect([tries.begin('198.51.100.1'), tries.begin('198.51.100.2')]).toEqual([0, 6])
})

test('right tries use nothing up', () => {
  const tries = countWrongTries(() => 0)
  for (let i = 0; i < 200; i++) {
    expect(tries.begin('192.0.2.1')).toBe(0)
    tries.right('192.0.2.1')
  }
})

test('one household of IPv6 is one address', () => {
  const tries = countWrongTries(() => 0)
  for (let i = 0; i < 4; i++) tries.begin(`2001:db8:1:2::${i}`)
  expect([tries.begin('2001:db8:1:2::ffff'), tries.begin('2001:db8:1:3::1')]).toEqual([1, 0])
})

test('a session ends after a week, and a thousand later ones end the first', () => {
  const time = clock()
  const sessions = openSessions(time.now)
  const token = sessions.begin()
  time.seconds = sessionSeconds - 1
  expect(sessions.holds(token)).toBe(true)
  time.seconds = sessionSeconds
  expect(sessions.holds(token)).toBe(false)
  const first = sessions.begin()
  for (let i = 0; i < 999; i++) sessions.begin()
  expect(sessions.holds(first)).toBe(true)
  sessions.begin()
  expect(sessions.holds(first)).toBe(false)
})
