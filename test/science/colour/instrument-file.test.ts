import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { instrumentFile } from '#api/science/colour/instrument-file.ts'
import checks from '#test/reference/colour/spectra-checks.json' with { type: 'json' }

const cgats = (fields: string, ...sets: string[]) =>
  [
    'CGATS.17',
    'ORIGINATOR "bench"',
    'WEIGHTING_FUNCTION "ILLUMINANT, D65"',
    'WEIGHTING_FUNCTION "OBSERVER, 10 degree"',
    '# a remark',
    'BEGIN_DATA_FORMAT',
    fields,
    'END_DATA_FORMAT',
    `NUMBER_OF_SETS ${sets.length}`,
    'BEGIN_DATA',
    ...sets,
    'END_DATA',
    '',
  ].join('\n')

describe('CGATS.17 text', () => {
  test('L*a*b* by SAMPLE_ID, names with blanks in quotes, what the file says of itself', () => {
    const file = instrumentFile(
      cgats('SAMPLE_ID LAB_L LAB_A LAB_B', 'S1 50.1 -2.5 3', '"skein 2 #b" 40 0.5 -1e1 # dark'),
    )
    expect(file.faults).toEqual([])
    expect(file.from).toBe('lab')
    expect(file.readings).toEqual([
      { line: 11, sampleId: 'S1', lab: { L: 50.1, a: -2.5, b: 3 } },
      { line: 12, sampleId: 'skein 2 #b', lab: { L: 40, a: 0.5, b: -10 } },
    ])
    expect(file.keywords).toMatchObject({
      ORIGINATOR: 'bench',
      WEIGHTING_FUNCTION: 'ILLUMINANT, D65; OBSERVER, 10 degree',
    })
  })

  test('fields on several lines, in any order, among others, with the line ends of any machine', () => {
    const text = cgats('LAB_B SAMPLE_NAME\nSAMPLE_ID LAB_L LAB_A', '3 "a name" S1 50 2').replaceAll(
      '\n',
      '\r\n',
    )
    expect(instrumentFile(text).readings).toMatchObject([{ sampleId: 'S1', lab: { L: 50, a: 2, b: 3 } }])
  })

  test('a bad line is named with its reason and the others are read', () => {
    const file = instrumentFile(
      cgats(
        'SAMPLE_ID LAB_L LAB_A LAB_B',
        'S1 50 1 2',
        'S2 fifty 1 2',
        'S3 50 1',
        'S4 101 0 0',
        '"" 50 0 0',
        'S6 1 2 3',
      ),
    )
    expect(file.readings.map(({ sampleId }) => sampleId)).toEqual(['S1', 'S6'])
    expect(file.faults).toEqual([
      { line: 12, reason: 'L*, a* and b* are not all numbers.' },
      { line: 13, reason: 'This line has 3 values for 4 columns.' },
      { line: 14, reason: 'L* is 0–100, a* and b* are −128–127.' },
      { line: 15, reason: 'SAMPLE_ID is empty.' },
    ])
  })

  test('a file that is cut off, or holds fewer sets than it announces, says so', () => {
    const whole = cgats('SAMPLE_ID LAB_L LAB_A LAB_B', 'S1 50 1 2', 'S2 51 1 2')
    const cut = instrumentFile(whole.slice(0, whole.indexOf('S2')))
    expect(cut.readings).toHaveLength(1)
    expect(cut.faults).toMatchObject([{ line: 11, reason: expect.stringContaining('cut off') }])
    const fewer = instrumentFile(whole.replace('NUMBER_OF_SETS 2', 'NUMBER_OF_SETS 3'))
    expect(fewer.faults).toMatchObject([{ reason: 'The file announces 3 sets and holds 2.' }])
  })
})

// The same spectra and colours as in the reference file, written as instruments write them.
describe('spectra', () => {
  const [set] = checks.sets
  const nm = Array.from({ length: 36 }, (_, i) => 380 + 10 * i)
  const samples = set!.samples
  const expectPrinted = (text: string) => {
    const { readings, faults, from } = instrumentFile(text)
    expect(faults).toEqual([])
    expect(from).toBe('spectrum')
    expect(readings.map(({ sampleId }) => sampleId)).toEqual(samples.map(({ name }) => name))
    for (const [i, { lab, spectrum }] of readings.entries()) {
      const [L, a, b] = samples[i]!.expected['D65/10deg'].Lab
      expect(Math.abs(lab.L - L!)).toBeLessThanOrEqual(checks.tolerance.Lab)
      expect(Math.abs(lab.a - a!)).toBeLessThanOrEqual(checks.tolerance.Lab)
      expect(Math.abs(lab.b - b!)).toBeLessThanOrEqual(checks.tolerance.Lab)
      expect(spectrum?.wavelengths).toEqual(nm)
    }
  }

  test('as CGATS fractions', () => {
    const fields = ['SAMPLE_ID', ...nm.map((one) => `SPECTRAL_NM${one}`)].join(' ')
    expectPrinted(cgats(fields, ...samples.map(({ name, R }) => [`"${name}"`, ...R].join('\t'))))
  })

  test('as CGATS percent, with L*a*b* of another light beside, which is passed over', () => {
    const fields = ['SAMPLE_ID', 'LAB_L', 'LAB_A', 'LAB_B', ...nm.map((one) => `SPECTRAL_${one}`)].join(' ')
    const sets = samples.map(({ name, R }) => [`"${name}"`, 1, 2, 3, ...R.map((one) => one * 100)].join(' '))
    expectPrinted(cgats(fields, ...sets))
  })

  test('as CSV with commas, and with semicolons and decimal commas', () => {
    const head = ['SAMPLE_ID', ...nm.map((one) => `${one} nm`)]
    expectPrinted([head.join(','), ...samples.map(({ name, R }) => [`"${name}"`, ...R].join(','))].join('\n'))
    const rows = samples.map(({ name, R }) =>
      [name, ...R.map((one) => String(one).replace('.', ','))].join(';'),
    )
    expectPrinted(`\uFEFF${[head.join(';'), ...rows].join('\r\n')}\r\n`)
  })

  test('wavelengths in any order of columns', () => {
    const order = [...nm.keys()].reverse()
    const head = [...order.map((i) => nm[i]), 'SAMPLE_ID'].join('\t')
    expectPrinted(
      [head, ...samples.map(({ name, R }) => [...order.map((i) => R[i]), name].join('\t'))].join('\n'),
    )
  })

  test('a file that says its scale is believed: 1.2 of 100 is a black', () => {
    const text = cgats('SAMPLE_ID NM400 NM410 NM420', 'S1 1.2 1.2 1.2').replace(
      'ORIGINATOR',
      'SPECTRAL_NORM "100"\nORIGINATOR',
    )
    // Y = 1.2 %: below L* 100 by far; 903.3 × 0.012 is past the bend, so the cube root: 10.6.
    expect(instrumentFile(text).readings[0]!.lab.L).toBeCloseTo(116 * Math.cbrt(0.012) - 16, 6)
  })

  test('a hole in a spectrum is a fault at its wavelength', () => {
    const file = instrumentFile('SAMPLE_ID,400,410,420\nS1,0.5,,0.5\nS2,0.5,-0.1,0.5\nS3,0.5,0.5,0.5')
    expect(file.readings.map(({ sampleId }) => sampleId)).toEqual(['S3'])
    expect(file.faults).toEqual([
      { line: 2, reason: 'The reflectance at 410 nm is not a number.' },
      { line: 3, reason: 'The reflectance at 410 nm is outside what yarn can reflect.' },
    ])
  })

  test('uneven wavelengths are a fault; with L*a*b* beside, those are taken and it is said', () => {
    expect(instrumentFile('SAMPLE_ID,400,410,430\nS1,1,1,1')).toMatchObject({ readings: [], from: 'nothing' })
    const file = instrumentFile('SAMPLE_ID,L*,a*,b*,400,410,430\nS1,50,0,0,1,1,1')
    expect(file).toMatchObject({ from: 'lab', readings: [{ lab: { L: 50 } }], faults: [{ line: 1 }] })
  })
})

test('a quoted cell may hold separators, quotes and line breaks; lines are counted on', () => {
  const file = instrumentFile('SAMPLE_ID;L*;a*;b*\n"a; ""b""\nc";50;1;2\nlast;x;1;2')
  expect(file.readings).toMatchObject([{ line: 2, sampleId: 'a; "b"\nc' }])
  expect(file.faults).toMatchObject([{ line: 4 }])
})

test.each([
  ['nothing', '', 'SAMPLE_ID'],
  ['no names', 'L*,a*,b*\n50,1,2', 'SAMPLE_ID'],
  ['no colour', 'SAMPLE_ID,note\nS1,hello', 'neither'],
  ['no readings', 'SAMPLE_ID,L*,a*,b*', 'no readings'],
  ['a quotation mark left open', 'SAMPLE_ID,L*,a*,b*\n"S1,50,1,2', 'never closed'],
])('a text with %s is a fault, said in words', (_name, text, words) => {
  const { readings, faults } = instrumentFile(text)
  expect(readings).toEqual([])
  expect(faults.some(({ reason }) => reason.includes(words))).toBe(true)
})

test('no text makes it throw, and every reading is a colour within bounds', () => {
  const piece = fc.constantFrom(
    'CGATS.17\n',
    'BEGIN_DATA_FORMAT\n',
    'END_DATA_FORMAT\n',
    'BEGIN_DATA\n',
    'END_DATA\n',
    'SAMPLE_ID',
    'LAB_L',
    'LAB_A',
    'LAB_B',
    '400',
    '410',
    ' ',
    ',',
    ';',
    '\t',
    '\n',
    '"',
    '#',
    '50',
    '-1',
    '0.5',
    '1e999',
    'NaN',
    '__proto__',
    'constructor',
  )
  fc.assert(
    fc.property(
      fc.oneof(
        fc.array(piece, { maxLength: 60 }).map((all) => all.join('')),
        fc.string(),
      ),
      (text) => {
        for (const { lab } of instrumentFile(text).readings) {
          expect(lab.L).toBeGreaterThanOrEqual(0)
          expect(lab.L).toBeLessThanOrEqual(100)
          expect(Number.isFinite(lab.a) && Number.isFinite(lab.b)).toBe(true)
        }
      },
    ),
    { numRuns: 2000 },
  )
})
