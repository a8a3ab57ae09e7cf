import { type KitchenUnit, kitchenUnits } from './kitchen-units.ts'

export type CalledUnit =
  | { readonly kind: 'unit'; readonly unit: KitchenUnit }
  /** The word is known, but it has several sizes and nothing says whose is meant. */
  | { readonly kind: 'several'; readonly units: readonly KitchenUnit[] }
  | { readonly kind: 'unknown' }

const words: Readonly<Record<string, string>> = {
  ml: 'mL',
  millilitre: 'mL',
  milliliter: 'mL',
  cc: 'mL',
  cl: 'cL',
  centilitre: 'cL',
  dl: 'dL',
  decilitre: 'dL',
  deciliter: 'dL',
  l: 'L',
  litre: 'L',
  liter: 'L',
  tsp: 'tsp',
  teaspoon: 'tsp',
  tbsp: 'tbsp',
  tbs: 'tbsp',
  tblsp: 'tbsp',
  tablespoon: 'tbsp',
  dsp: 'dessertspoon',
  dessertspoon: 'dessertspoon',
  floz: 'fl oz',
  fluidounce: 'fl oz',
  cup: 'cup',
  pint: 'pint',
  pt: 'pint',
  quart: 'quart',
  qt: 'quart',
  gallon: 'gallon',
  gal: 'gallon',
  mg: 'mg',
  milligram: 'mg',
  g: 'g',
  gram: 'g',
  gramme: 'g',
  kg: 'kg',
  kilo: 'kg',
  kilogram: 'kg',
  oz: 'oz',
  ounce: 'oz',
  lb: 'lb',
  pound: 'lb',
}

const systems: Readonly<Record<string, string>> = {
  us: 'US',
  usa: 'US',
  american: 'US',
  customary: 'US',
  label: 'US label',
  legal: 'US label',
  metric: 'metric',
  au: 'Australian',
  aus: 'Australian',
  australia: 'Australian',
  australian: 'Australian',
  uk: 'imperial',
  imp: 'imperial',
  imperial: 'imperial',
  british: 'imperial',
  old: 'old imperial',
}

// “old imperial” names two systems and means one: the narrower of the two.
const narrower = ['old imperial', 'US label', 'Australian', 'US', 'metric', 'imperial']

/**
 * The unit that somebody means by a word, however it is spelt: `Tablespoons (U.S.)`, `us tbsp`, `ML`.
 *
 * A bare “cup” is five different cups: then the answer is all of them, so that the person can choose.
 *
 * @example
 * const bare = kitchenUnitCalled('pint').units.map((unit) => unit.name)
 * const full = kitchenUnitCalled('US cups').unit.name
 * [bare, full] // [['pint (US)', 'pint (imperial)'], 'cup (US)']
 */
export function kitchenUnitCalled(text: string): CalledUnit {
  const spelt = text
    .toLowerCase()
    .replace(/u\.\s?s\.(?:a\.)?/g, 'us')
    .replace(/fl(?:uid)?\.?[\s_-]*(oz|ounce)/g, 'floz')
    .trim()
  // “100 g” or “mL/g” names no unit of the kitchen: passing over the number or the stroke would be a wrong answer.
  if (/[^a-z\s()._,-]/.test(spelt)) return { kind: 'unknown' }
  let word: string | undefined
  const named = new Set<string>()
  for (const part of spelt.split(/[^a-z]+/)) {
    if (part === '') continue
    const system = lookUp(systems, part)
    const known = lookUp(words, part) ?? lookUp(words, part.replace(/s$/, ''))
    if (system !== undefined) named.add(system)
    else if (known !== undefined && word === undefined) word = known
    else return { kind: 'unknown' }
  }
  const narrowest = narrower.find((it) => named.has(it))
  // Australia's own measure is the tablespoon; its cup and teaspoon are the metric ones.
  const system = narrowest === 'Australian' && word !== 'tbsp' ? 'metric' : narrowest
  const units = kitchenUnits.filter(
    (it) => it.word === word && (system === undefined || it.system === system),
  )
  const [first] = units
  if (first === undefined) return { kind: 'unknown' }
  return units.length === 1 ? { kind: 'unit', unit: first } : { kind: 'several', units }
}

function lookUp(names: Readonly<Record<string, string>>, key: string): string | undefined {
  return Object.hasOwn(names, key) ? names[key] : undefined
}

/**
 * What is wrong with the name of a unit, in a sentence that helps; undefined when nothing is.
 *
 * @example
 * unitFault('cup', 'volume') // 'There is more than one cup. Write cup (US), cup (US label), cup (metric) or cup (imperial).'
 */
export function unitFault(text: string, kind: KitchenUnit['kind']): string | undefined {
  const called = kitchenUnitCalled(text)
  const examples = kind === 'volume' ? 'mL, tbsp (metric) or cup (US)' : 'g, oz or lb'
  if (called.kind === 'unknown')
    return `“${text.slice(0, 40)}” is not a unit that is known here. Write for example ${examples}.`
  if (called.kind === 'several') {
    const names = called.units.map((unit) => unit.name)
    return `There is more than one ${called.units[0]?.word}. Write ${names.slice(0, -1).join(', ')} or ${names.at(-1)}.`
  }
  if (called.unit.kind === kind) return undefined
  return kind === 'volume'
    ? `${called.unit.name} is a weight; this is measured by volume, for example in ${examples}.`
    : `${called.unit.name} is a volume; this is weighed, for example in ${examples}.`
}
