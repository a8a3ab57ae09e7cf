export type KitchenUnit = {
  /** Unambiguous, as it is shown and kept. */
  readonly name: string
  /** The word for it, and whose it is: `cup` of `US`. Empty where there is only one. */
  readonly word: string
  readonly system: string
  readonly kind: 'volume' | 'mass'
  /** Millilitres, or grams. */
  readonly size: number
}

const volume = (word: string, system: string, size: number): KitchenUnit => ({
  name: system === '' ? word : `${word} (${system})`,
  word,
  system,
  kind: 'volume',
  size,
})
const mass = (name: string, size: number): KitchenUnit => ({
  name,
  word: name,
  system: '',
  kind: 'mass',
  size,
})

/**
 * Every measure of the kitchen that a recipe may name, in millilitres or grams.
 *
 * US: gallon of 231 cubic inches (NIST Handbook 44). US label: 21 CFR 101.9(b)(5)(viii). Imperial: gallon of
 * 4.54609 L (UK Units of Measurement Regulations). Old imperial spoons: older cookery books, which do not agree.
 * Ounce and pound: international avoirdupois, 1959.
 */
export const kitchenUnits: readonly KitchenUnit[] = [
  volume('mL', '', 1),
  volume('cL', '', 10),
  volume('dL', '', 100),
  volume('L', '', 1000),
  volume('tsp', 'US', 4.92892159375),
  volume('tbsp', 'US', 14.78676478125),
  volume('fl oz', 'US', 29.5735295625),
  volume('cup', 'US', 236.5882365),
  volume('pint', 'US', 473.176473),
  volume('quart', 'US', 946.352946),
  volume('gallon', 'US', 3785.411784),
  volume('tsp', 'US label', 5),
  volume('tbsp', 'US label', 15),
  volume('fl oz', 'US label', 30),
  volume('cup', 'US label', 240),
  volume('tsp', 'metric', 5),
  volume('dessertspoon', 'metric', 10),
  volume('tbsp', 'metric', 15),
  volume('cup', 'metric', 250),
  volume('tbsp', 'Australian', 20),
  volume('fl oz', 'imperial', 28.4130625),
  volume('cup', 'imperial', 284.130625),
  volume('pint', 'imperial', 568.26125),
  volume('quart', 'imperial', 1136.5225),
  volume('gallon', 'imperial', 4546.09),
  volume('tsp', 'old imperial', 3.5516328125),
  volume('tbsp', 'old imperial', 17.7581640625),
  mass('mg', 0.001),
  mass('g', 1),
  mass('kg', 1000),
  mass('oz', 28.349523125),
  mass('lb', 453.59237),
]
