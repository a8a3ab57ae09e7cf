import { expect, test } from 'vitest'
import { measured } from '#web/form/measured.ts'

// One US cup is 236.5882365 mL: NIST Handbook 44.
test('a quarter of a cup counts as 59.1 mL and is kept as it was typed', () => {
  const { value, countsAs } = measured('¼', 'cup (US)', { keptAs: 'mL' })
  expect(value).toBeCloseTo(236.5882365 / 4, 9)
  expect(countsAs).toBe('counts as 59.1 mL; kept as ¼ cup (US)')
})

test('a decimal comma is read as one, and said', () => {
  expect(measured('10,2', 'L', { keptAs: 'L' })).toMatchObject({ value: 10.2, countsAs: 'read as 10.2 L' })
})

test('a plain number needs no second line', () => {
  expect(measured('35', 'min', { keptAs: 'min' }).countsAs).toBeUndefined()
})

test('blank is not recorded, never zero', () => {
  expect(measured('  ', 'mL', { keptAs: 'mL' })).toMatchObject({
    value: undefined,
    fault: undefined,
    doubt: undefined,
  })
})

test('what is impossible is at fault, with what was probably meant', () => {
  const { value, fault } = measured('3500', 'min', { keptAs: 'min', variable: 'steamTime' })
  expect(value).toBeUndefined()
  expect(fault).toMatchObject({ suggestion: 35 })
})

test('what is unlikely is kept, and asked about', () => {
  const { value, doubt } = measured('150', 'mL per 100 g', { keptAs: 'mL per 100 g', variable: 'acid' })
  expect(value).toBe(150)
  expect(doubt).toMatch(/Keep it\?$/)
})

test('what cannot be read stays as it was typed, with a kind sentence', () => {
  const { typed, fault } = measured('a pinch', 'g', { keptAs: 'g' })
  expect(typed).toBe('a pinch')
  expect(fault?.detail).toContain('cannot be counted')
})

test('a volume is no weight', () => {
  expect(measured('1', 'cup (US)', { keptAs: 'g' }).fault?.detail).toContain('cannot be turned into g')
})

// A US tablespoon is 14.78676 mL, a metric one 15: NIST Handbook 44 and the metric measure.
test('a bare “tbsp” behind the number is the one chosen beside it; without a choice it is asked which', () => {
  const chosen = measured('1½ tbsp', 'tbsp (US)', { keptAs: 'mL' })
  expect(chosen.value).toBeCloseTo(22.18, 2)
  expect(chosen.countsAs).toBe('counts as 22.2 mL; kept as 1½ tbsp (US)')
  const bare = measured('1½ tbsp', 'mL', { keptAs: 'mL' })
  expect(bare.value).toBeUndefined()
  expect(bare.fault?.detail).toContain('There is more than one tbsp')
  expect(measured('2 tbsp (metric)', 'mL', { keptAs: 'mL' }).value).toBe(30)
})

test('a bare number has no unit, and what has a least is not below it', () => {
  expect(measured('5 kg', '', { keptAs: '' }).fault?.detail).toBe('This is a bare number, without kg.')
  expect(measured('-1', 'mL', { keptAs: 'mL', least: 0 })).toMatchObject({
    value: undefined,
    fault: { detail: 'This is 0 or more.' },
  })
  expect(measured('0', 'mL', { keptAs: 'mL', least: 0 }).value).toBe(0)
})
