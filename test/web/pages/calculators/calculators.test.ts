import { expect, test } from 'vitest'
import { startPh } from '#api/science/bath/start-ph.ts'
import { kindOfUnit } from '#api/science/recipe/convert.ts'
import { type AcidKey, bathOf } from '#web/pages/calculators/acid-fields.ts'
import { phInWords } from '#web/pages/calculators/acid-words.ts'
import { heldWith } from '#web/pages/calculators/held-with.ts'
import { asVolume, shadeOf, threeOf } from '#web/pages/calculators/in-words.ts'
import { labTyped } from '#web/pages/calculators/lab-typed.ts'
import { lightInWords } from '#web/pages/calculators/light-words.ts'
import { partFault, recipeOf } from '#web/pages/calculators/rescale-parts.ts'
import { chanceInWords, type RunsKey, runsQuestion, runsShown } from '#web/pages/calculators/runs-question.ts'
import { studioOf } from '#web/pages/calculators/studio.ts'

const fieldsOf =
  <Key extends string>(values: Partial<Record<Key, number>>) =>
  (key: Key): number | undefined =>
    values[key]
const runs = (values: Partial<Record<RunsKey, number>>) => ({
  value: fieldsOf(values),
  missing: (...keys: readonly RunsKey[]) => keys.filter((key) => values[key] === undefined),
})

test('every unit that a studio offers measures a weight or a volume', () => {
  for (const system of ['metric', 'us', 'imperial', 'nonsense']) {
    const { weightUnits, volumeUnits } = studioOf([{ key: 'units', value: { system } }])
    expect(new Set(weightUnits.map(kindOfUnit))).toEqual(new Set(['mass']))
    expect(new Set(volumeUnits.map(kindOfUnit))).toEqual(new Set(['volume']))
  }
})

test('what is kept of the usual values stands before what most have; a blank stays blank', () => {
  const { usual } = studioOf([{ key: 'usual', value: { stockPercent: 0.5, waterAlkalinity: null } }])
  expect(usual).toMatchObject({ stockPercent: '0.5', waterAlkalinity: '', liquorRatio: '30' })
})

// NIST Handbook 44: a US cup is 236.5882365 mL; 12 oz are 340.19 g. One cup to a pound is 52.2 mL for each 100 g.
test('three quarters of a US cup on twelve ounces is 52.2 mL for each 100 g', () => {
  const { per100g, perLitre } = bathOf(
    'acetic',
    fieldsOf<AcidKey>({ vinegar: 0.75 * 236.5882365, strength: 5, bath: 10.2, yarn: 12 * 28.349523125 }),
  )
  expect(per100g).toBeCloseTo(52.16, 2)
  expect(perLitre).toBeCloseTo(17.396, 3)
})

// By charge balance as in the handbooks, 20 mL of 5 % vinegar in a litre: 4.1 at 150 mg/L, 3.3 in water without alkalinity.
test.each([
  [150, 'About 4.1'],
  [0, 'About 3.3'],
])('twenty millilitres of vinegar in a litre at %d mg/L read %s', (water, words) => {
  const { acids, alkalinity } = bathOf(
    'acetic',
    fieldsOf<AcidKey>({ vinegar: 20, strength: 5, bath: 1, water }),
  )
  if (acids === undefined || alkalinity === undefined) throw new Error('The bath is not whole.')
  expect(phInWords(startPh(acids, alkalinity)).figure).toBe(words)
})

test('four millilitres in a litre of hard water are not acid, whatever they read cold', () => {
  const { acids, alkalinity } = bathOf(
    'acetic',
    fieldsOf<AcidKey>({ vinegar: 4, strength: 5, bath: 1, water: 300 }),
  )
  if (acids === undefined || alkalinity === undefined) throw new Error('The bath is not whole.')
  expect(phInWords(startPh(acids, alkalinity))).toEqual({
    figure: 'About 6.3 cold, not acid when hot',
    words: 'Dye is taken up hot: count this bath as not acid.',
  })
})

test('without the strength there is no bath, and citric acid needs none', () => {
  expect(bathOf('acetic', fieldsOf<AcidKey>({ vinegar: 20, bath: 1 }))).toEqual({})
  // 1 g of anhydrous citric acid carries as much acid as 18.8 mL of 5 % vinegar: 3 ÷ 192.124 and 0.05 ÷ 60.052 mol.
  expect(bathOf('citric', fieldsOf<AcidKey>({ citric: 1, bath: 1 })).perLitre).toBeCloseTo(18.75, 2)
})

test('three numbers are told from two, from four, and from a decimal comma', () => {
  expect(threeOf('52,1\t3,2\t−8')).toEqual(['52,1', '3,2', '−8'])
  expect(threeOf('52.1, 3.2, -8')).toEqual(['52.1', '3.2', '-8'])
  for (const text of ['52,1', '52 3', '1 2 3 4', 'L a b', '']) expect(threeOf(text)).toBeUndefined()
})

test('a colour is there when all three axes are possible', () => {
  expect(labTyped({ L: '52,1', a: '3.2', b: '−8' })).toEqual({ L: 52.1, a: 3.2, b: -8 })
  expect(labTyped({ L: '152', a: '0', b: '0' })).toBeUndefined()
  expect(labTyped({ L: '52', a: '', b: '0' })).toBeUndefined()
})

test('a recipe leaves out what has no amount, and names what has no name', () => {
  const parts = [
    { id: 0, name: '', amount: '1 1/2', unit: 'tbsp (metric)' },
    { id: 1, name: 'Salt', amount: 'a pinch', unit: 'g' },
    { id: 2, name: 'Teal', amount: '-3', unit: 'g' },
  ]
  expect(recipeOf(parts, 150)).toEqual([{ name: 'ingredient 1', per100g: 15, measure: 'mL' }])
  expect(parts.map((part) => partFault(part).length)).toEqual([0, 1, 1])
})

test('a question waits until margin, loss, SD and chance make sense', () => {
  expect(runsQuestion('no-worse', runs({ margin: 1, extra: 0, chance: 80 })).missing).toEqual(['sd'])
  expect(runsQuestion('no-worse', runs({ margin: 1, extra: 1, sd: 0, chance: 100 })).missing).toEqual([
    'an extra loss below the margin',
    'an SD above 0',
    'a chance between 0 and 100 %',
  ])
  expect(runsQuestion('no-worse', runs({ margin: 1, extra: 0.25, sd: 0.5, chance: 80 })).question).toEqual({
    distance: 0.75,
    sd: 0.5,
    goal: 'no-worse',
    power: 0.8,
  })
  expect(runsShown(undefined).at(-1)).toBe(50)
  expect(chanceInWords(0.9999)).not.toContain('100')
})

test('a trial keeps what it holds already, and takes the new value of the same name', () => {
  const held = [
    { key: 'Depth', value: '2 %', plusMinus: 0.1 },
    { key: 'base', value: 'merino' },
  ]
  expect(
    heldWith(held, [
      { key: 'depth', value: '1 %' },
      { key: 'water', value: 'soft' },
    ]),
  ).toEqual([
    { key: 'Depth', value: '1 %', plusMinus: 0.1 },
    { key: 'base', value: 'merino' },
    { key: 'water', value: 'soft' },
  ])
})

test('amounts, depths and light are said as a dyer says them', () => {
  expect([asVolume(999), asVolume(1000)]).toEqual([
    { amount: '999', unit: 'mL' },
    { amount: '1', unit: 'L' },
  ])
  expect([shadeOf(0), shadeOf(0.5), shadeOf(7)]).toEqual([
    'no dye: a control',
    'a mid shade: 0.5–1.5 %',
    'deeper than black needs',
  ])
  expect(lightInWords({ kind: 'above', number: 6, left: [] }).figure).toBe('Above 6')
})
