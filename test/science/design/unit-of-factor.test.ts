import { expect, test } from 'vitest'
import { type GivenThing, unitOfFactor } from '#api/science/design/unit-of-factor.ts'

const thing = (
  level: number,
  session: string,
  vessel: string,
  skein: string,
  more: Partial<GivenThing> = {},
) => ({
  level,
  session,
  vessel,
  skein,
  ...more,
})

test('one packet for each time in each session: the packet is the unit, once a session', () => {
  const things = ['Mon', 'Tue', 'Wed', 'Thu'].flatMap((day) =>
    [20, 75].flatMap((level) =>
      ['a', 'b'].map((part) => thing(level, day, `packet ${level}`, `${day}${level}${part}`)),
    ),
  )
  const unit = unitOfFactor(things)
  expect(unit.kind).toBe('vessel')
  // Packets are numbered anew in each session: four of each time, not one, and not eight skeins.
  expect(unit.counts.get('20')).toBe(4)
})

test('a whole session for each level makes the session the unit', () => {
  const unit = unitOfFactor([
    thing(20, 'Mon', 'p1', 'a'),
    thing(20, 'Mon', 'p2', 'b'),
    thing(75, 'Tue', 'p3', 'c'),
  ])
  expect(unit).toMatchObject({ kind: 'session' })
  expect(unit.counts.get('20')).toBe(1)
})

test('levels given to skeins within one pot make the skein the unit', () => {
  const unit = unitOfFactor([
    thing(0, 'Mon', 'pot', 'a'),
    thing(1, 'Mon', 'pot', 'b'),
    thing(1, 'Mon', 'pot', 'c'),
  ])
  expect(unit.kind).toBe('skein')
  expect(unit.counts.get('1')).toBe(2)
})

test('parts of one skein that share its level are one unit', () => {
  const part = (level: number, parent: string, skein: string) => thing(level, 'Mon', 'pot', skein, { parent })
  const unit = unitOfFactor([part(0, 'A', 'A1'), part(0, 'A', 'A2'), part(1, 'B', 'B1')])
  expect(unit.kind).toBe('parent')
  expect(unit.counts.get('0')).toBe(1)
})

test('packets of one level that share a wash jar of their own are one unit', () => {
  const jar = (name: string) => ({ later: [name] })
  const unit = unitOfFactor([
    thing(20, 'Mon', 'p1', 'a', jar('jar of 20')),
    thing(20, 'Tue', 'p2', 'b', jar('jar of 20')),
    thing(75, 'Mon', 'p3', 'c', jar('jar 1')),
    thing(75, 'Tue', 'p4', 'd', jar('jar 2')),
  ])
  expect([...unit.counts]).toEqual([
    ['20', 1],
    ['75', 2],
  ])
  expect(unit.joined).toEqual(['20'])
})

test('a wash jar with every level in it joins nothing', () => {
  const later = ['the big jar']
  const unit = unitOfFactor([
    thing(20, 'Mon', 'p1', 'a', { later }),
    thing(20, 'Tue', 'p2', 'b', { later }),
    thing(75, 'Mon', 'p3', 'c', { later }),
  ])
  expect(unit.counts.get('20')).toBe(2)
})
