import { bounds, isVariable, variableKeys } from '#api/contract/bounds.ts'
import type { Column } from '#api/contract/table.ts'

type Guess = Omit<Column, 'heading'>
type Rule = readonly [RegExp, (found: RegExpExecArray) => Guess]

/** A factor that the trial already has: a column of its name gives its levels. */
export type KnownFactor = { readonly key: string; readonly label: string }

const fibres = /(wool|nylon|cotton|silk|alpaca|acrylic|polyester|viscose|linen)/

// Headings as people write them, in lower case with words parted by single blanks. The first that fits is taken.
// A wear, a companion or a lot is never guessed: such columns stay open, and the check asks for them.
const rules: readonly Rule[] = [
  [/^(run|session|day|bench|occasion)( no| number)?$/, () => ({ as: 'session' })],
  [/^(rack place|place|position|slot|rack)$/, () => ({ as: 'place' })],
  [/^(skein|code|piece|swatch|specimen|sample id)$/, () => ({ as: 'skein' })],
  [/^(packet|pot|jar|vessel|batch|bath)$/, () => ({ as: 'vessel' })],
  [/^(lot|dye lot)$/, () => ({ as: 'lot' })],
  [/^card$/, () => ({ as: 'card' })],
  [/^(equipment|ring|which pot)$/, () => ({ as: 'equipment' })],
  [/^item$/, () => ({ as: 'item' })],
  [/^(frame|photo|picture|sitting)$/, () => ({ as: 'frame' })],
  [/^(base|yarn)$/, () => ({ as: 'base' })],
  [/^(mass|weight)( g)?$/, () => ({ as: 'mass' })],
  [/^(lost|lost because|lost reason)$/, () => ({ as: 'lost because' })],
  [/^(washes|wash cycles|cycles)$/, () => ({ as: 'worn', axis: 'W2' })],
  [/^(days|light days)$/, () => ({ as: 'worn', axis: 'X1 days' })],
  [/^steam( time)?( min| minutes)?$/, () => ({ as: 'level', factor: 'steamTime' })],
  [/^(vinegar|acid)( ml)?( per 100 ?g)?$/, () => ({ as: 'level', factor: 'acid' })],
  [/^(colourway|schedule|shortcut|remedy|treatment|arm)$/, ([name]) => ({ as: 'level', factor: name ?? '' })],
  [/^([lab])\*?(?: ?(0|before))$/, ([, axis]) => ({ as: labAxis(axis), when: 'before' })],
  [/^([lab])\*?(?: ?(1|after))$/, ([, axis]) => ({ as: labAxis(axis), when: 'after' })],
  [/^([lab])\*?$/, ([, axis]) => ({ as: labAxis(axis) })],
  [/^rinses( to 4)?$/, () => ({ as: 'outcome', kind: 'rinses to 4' })],
  [/^felt(ing)?$/, () => ({ as: 'outcome', kind: 'felting' })],
  [
    /^(staining|stain)\b/,
    ({ input }) => ({ as: 'outcome', kind: 'staining', when: 'after', ...fibreIn(input) }),
  ],
  [/^wet contact/, ({ input }) => ({ as: 'outcome', kind: 'staining', of: 'part', ...fibreIn(input) })],
  [/^(crock|rub)/, () => ({ as: 'outcome', kind: 'staining', of: 'part', fibre: 'cotton' })],
  [/^(change grade|grade)/, () => ({ as: 'outcome', kind: 'change grade', when: 'after' })],
  [/^(pct |% )?dye left/, () => ({ as: 'outcome', kind: 'dye left', of: 'vessel' })],
  [/^ph\b/, () => ({ as: 'outcome', kind: 'pH', of: 'vessel' })],
  [/^spread/, () => ({ as: 'outcome', kind: 'spread' })],
  [/^(.+?) zone( pct| share| %)?$/, ([, zone]) => ({ as: 'outcome', kind: 'zone share', text: zone ?? '' })],
  [/^dark twin/, () => ({ as: 'outcome', kind: 'dE00', role: 'dark twin' })],
  [/^(de ?00|δe ?00|ciede2000)\b/, () => ({ as: 'outcome', kind: 'dE00' })],
  [/^evenness/, () => ({ as: 'outcome', kind: 'evenness' })],
  [/^handle/, () => ({ as: 'outcome', kind: 'handle' })],
]

/**
 * What the columns of a table probably mean, from their headings; `ignore` where nothing is known of one. A heading
 * “name [unit]” or “name (unit)” carries its unit.
 */
export function guessColumns(headings: readonly string[], factors: readonly KnownFactor[] = []): Column[] {
  const guessed = headings.map((heading) => ({ heading, ...guessOf(heading, factors) }))
  // L* alone, without a* and b*, is no colour: it is kept as a lightness.
  return guessed.map((column) => {
    if (column.as !== 'L') return column
    const whole = (['a', 'b'] as const).every((axis) =>
      guessed.some((it) => it.as === axis && it.when === column.when),
    )
    return whole ? column : { heading: column.heading, as: 'outcome', kind: 'lightness' }
  })
}

function guessOf(heading: string, factors: readonly KnownFactor[]): Guess {
  const { name, unit } = headingParts(heading)
  const withUnit = (guess: Guess): Guess => (unit ? { ...guess, unit } : guess)
  const plain = plainWords(name)
  const factor = factors.find((it) => plainWords(it.key) === plain || plainWords(it.label) === plain)
  if (factor) return withUnit({ as: 'level', factor: factor.key })
  for (const [pattern, guess] of rules) {
    const found = pattern.exec(plain)
    if (found) return withUnit(guess(found))
  }
  const variable = variableKeys.find(
    (key) => plainWords(key) === plain || plainWords(bounds[key].label) === plain,
  )
  if (variable && isVariable(variable)) return withUnit({ as: 'condition', key: variable })
  return { as: 'ignore' }
}

/**
 * The name and the unit of a heading.
 *
 * @example
 * headingParts('steam time [min]') // { name: 'steam time', unit: 'min' }
 */
export function headingParts(heading: string): { name: string; unit?: string } {
  const text = heading.trim()
  if (!/[\])]$/.test(text)) return { name: text }
  const before = Math.max(text.lastIndexOf(']', text.length - 2), text.lastIndexOf(')', text.length - 2))
  const opens = ['[', '('].map((sign) => text.indexOf(sign, before + 1)).filter((at) => at > 0)
  if (opens.length === 0 || Math.min(...opens) > text.length - 3) return { name: text }
  const at = Math.min(...opens)
  return { name: text.slice(0, at).trim(), unit: text.slice(at + 1, -1).trim() }
}

function plainWords(name: string): string {
  return name
    .replace(/([a-z]{2})([A-Z])/g, '$1 $2')
    .replace(/([LabB])([01])$/, '$1 $2')
    .toLowerCase()
    .replace(/[_\-./]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
}

function labAxis(letter: string | undefined): 'L' | 'a' | 'b' {
  return letter === 'l' ? 'L' : letter === 'a' ? 'a' : 'b'
}

function fibreIn(words: string): { fibre?: string } {
  const fibre = fibres.exec(words)?.[1]
  return fibre ? { fibre } : {}
}
