import { expect, test } from 'vitest'
import { kilogramsFor, protocols } from '#api/science/fastness/protocols.ts'
import reference from '#test/reference/colour/fastness-tests.json' with { type: 'json' }

const standard = (name: string) => {
  const found = reference.tests.find((one) => one.standard.startsWith(name))
  if (!found) throw new Error(`no ${name}`)
  return found
}
const protocol = (code: string) => {
  const found = protocols.find((one) => one.code === code)
  if (!found) throw new Error(`no ${code}`)
  return found
}

test('the codes are those of washes, light and rubs, each once', () => {
  expect(protocols.map(({ code }) => code)).toEqual([
    'W1',
    'W2',
    'W3',
    'W4',
    'W5',
    'W6',
    'X0',
    'X1',
    'X2',
    'X3',
    'X4',
    'rub dry',
    'rub wet',
  ])
})

// The file's C06 and C10 tables are mostly from memory.
test('the jar tumble is that of ISO 105-C06 A1S and A1M', () => {
  const jar = protocol('W3')
  const [short, long] = ['A1S', 'A1M'].map((code) =>
    standard('ISO 105-C06').conditions?.find((one) => one.code === code),
  )
  expect(jar.celsius).toEqual([short!.C, long!.C])
  expect(jar.minutes).toEqual([short!.min, long!.min])
  expect(jar.balls).toBe(short!.balls)
})

test('the hand wash is that of ISO 105-C10 A(1): soap 5 g/L, 50 mL/g, 40 °C, 30 min', () => {
  const soap = standard('ISO 105-C10')
  const mild = soap.conditions?.find(({ code }) => code === 'A(1)')
  const wash = protocol('W2')
  expect(wash.soapGramsPerLitre).toBe(soap.soap_g_per_L)
  expect(`${wash.liquorMlPerGram}:1`).toBe(soap.liquor_ratio)
  expect(wash.celsius).toEqual([mild!.C, mild!.C])
  expect(wash.minutes).toEqual([mild!.min, mild!.min])
})

// Read from public text (the file's note).
test('rubbing is that of ISO 105-X12, wet contact as warm and long as ISO 105-E01', () => {
  const rub = standard('ISO 105-X12')
  for (const code of ['rub dry', 'rub wet'])
    expect(protocol(code)).toMatchObject({
      newtons: rub.force_N,
      fingerMm: rub.finger_mm,
      doubleStrokes: rub.cycles,
    })
  expect(Math.abs(protocol('rub dry').trackCm! * 10 - rub.track_mm!)).toBeLessThanOrEqual(4)
  const water = standard('ISO 105-E01')
  expect(protocol('W5').celsius).toEqual([water.C, water.C])
  expect(protocol('W5').minutes![0]).toBe(water.hours! * 60)
})

test('a hot stress, a control and light that cannot be compared support no claim', () => {
  const silent = protocols.filter(({ supportsClaim }) => !supportsClaim).map(({ code }) => code)
  expect(silent).toEqual(['W6', 'X0', 'X3', 'X4'])
})

test('12.5 kPa on 40 by 100 mm are 5.0986 kg', () => {
  const example = reference.arithmetic_examples.find(({ q }) => q.includes('12.5 kPa'))
  expect(kilogramsFor({ kilopascals: 12.5, squareMillimetres: 4000 })).toBeCloseTo(example!.a, 4)
  // 9 N as a pressure on 1 mm²: 9000 kPa.
  const rub = reference.arithmetic_examples.find(({ q }) => q.includes('9 N'))
  expect(kilogramsFor({ kilopascals: 9000, squareMillimetres: 1 })).toBeCloseTo(rub!.a, 4)
  expect(() => kilogramsFor({ kilopascals: 0, squareMillimetres: 1 })).toThrow(RangeError)
})
