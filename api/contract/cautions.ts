/** At what a caution is due: a kind of vessel, a way of heating, or a stuff that is handled. */
export type CautionAt =
  | 'jar'
  | 'steam'
  | 'microwave'
  | 'pressure'
  | 'powder'
  | 'metal'
  | 'acid'
  | 'first aid'
  | 'always'

export type SafetyCaution = {
  readonly at: CautionAt
  /** “Jars”, as a note is headed. */
  readonly title: string
  readonly text: string
  /** On what it rests: a standard, guidance of a public body, or common practice of the trade. */
  readonly source: string
}

const practice = 'common practice'

/** What to mind at the bench. The one list: the plan, the bench sheet and the page on method print from it. */
export const cautions: readonly SafetyCaution[] = [
  {
    at: 'first aid',
    title: 'Eyes',
    text: 'Dye or acid in an eye: rinse at once with gently running lukewarm water for 15 minutes, lids held open, contact lenses out, then see a doctor.',
    source: '15 minutes as for emergency eyewash, ANSI/ISEA Z358.1',
  },
  {
    at: 'first aid',
    title: 'Burns',
    text: 'Burn or scald: hold it under cool running water for 20 minutes, no ice and no butter. Call for help if it blisters, is larger than a hand, or is on the face.',
    source: 'first-aid guidance of public health services (20 minutes of cool running water)',
  },
  {
    at: 'first aid',
    title: 'Swallowed, or breathing is hard',
    text: 'Call your poison centre or emergency number at once, with the label or safety data sheet of the dye in your hand. Write the number on this sheet before you begin. Do not make anyone vomit.',
    source: 'first-aid guidance of poison centres',
  },
  {
    at: 'always',
    title: 'Pots',
    text: 'Dye pots, spoons and microwaves are never for food again, food-grade colour or not.',
    source: practice,
  },
  {
    at: 'powder',
    title: 'Powder',
    text: 'Dye powder is a sensitiser: breathed in, it can bring on asthma for good. Wear an FFP2 or N95 mask, work out of draughts over damp paper, and make the stock once. Gloves, apron, eye protection.',
    source:
      'health-and-safety guidance on dyestuffs as respiratory sensitisers; mask classes of EN 149 and NIOSH 42 CFR 84',
  },
  {
    at: 'metal',
    title: 'Metal-complex dyes',
    text: 'Metal-complex (premetallised) dyes hold chromium or cobalt. Read the safety data sheet, use the bath up, and take what is left to the collection of hazardous waste: never down the drain, into a septic tank or on the soil.',
    source: 'safety data sheets of such dyes; your local rules decide',
  },
  {
    at: 'jar',
    title: 'Jars',
    text: 'Lids loose, never screwed tight: a closed jar builds up pressure and can burst. Use heat-proof glass without chips, on a rack or cloth, warmed and cooled with its water. Never set hot glass on a cold or wet surface.',
    source: practice,
  },
  {
    at: 'pressure',
    title: 'Pressure',
    text: 'Hotter than boiling only in a vessel made for pressure, with a working valve, used by its manual and never for food again. Open it when it has cooled and no pressure is left. Never a screwed jar or a pot weighed down.',
    source: practice,
  },
  {
    at: 'steam',
    title: 'Steam',
    text: 'Steam burns: lid away from you, tongs, cool before you open, never boil dry.',
    source: practice,
  },
  {
    at: 'microwave',
    title: 'Microwave',
    text: 'Yarn wet through, wrap vented (a corner open, never sealed), no metal (clips, foil, metallic thread). Two minutes at a time at most, then let it stand and look. Never leave it: yarn that dries out chars and can catch fire.',
    source: practice,
  },
  {
    at: 'acid',
    title: 'Acid',
    text: 'Household acid only, up to 15 %, never with bleach: the two give off chlorine. Pour acid into water, never water into acid. Air the room when vinegar is hot.',
    source: practice,
  },
  {
    at: 'always',
    title: 'Children and animals',
    text: 'Keep them away; someone watches over learners.',
    source: practice,
  },
  {
    at: 'always',
    title: 'What is left',
    text: 'Use up the dye, let the bath cool, bring it near neutral with a little soda, then the drain if your local rules allow; care with septic tanks and wells.',
    source: practice,
  },
]

/** What to do when something has gone wrong: printed on every bench sheet, above what to mind. */
export const firstAid: readonly SafetyCaution[] = cautions.filter(({ at }) => at === 'first aid')

/** What of a trial says which cautions are due at its bench. */
export type BenchSaid = {
  readonly vesselKinds: readonly string[]
  readonly factors: readonly { readonly key: string; readonly stage: string }[]
  /** What is held the same, in a person’s own words. */
  readonly held: readonly { readonly key: string; readonly value: string | number }[]
}

/** °C above which an open pot cannot be, anywhere that people dye: water by the sea boils at 100. */
const boilingHere = 101

/**
 * The cautions that a bench calls for beyond those that always hold: by its vessels, what is varied, and what is held.
 *
 * @example
 * cautionsAt({ vesselKinds: ['jar'], factors: [{ key: 'acid', stage: 'dye' }], held: [] }).map(({ title }) => title) // ['Powder', 'Jars', 'Acid']
 */
export function cautionsAt({ vesselKinds, factors, held }: BenchSaid): readonly SafetyCaution[] {
  const words = [...factors.map(({ key }) => key), ...held.flatMap(({ key, value }) => [key, String(value)])]
  const says = (sign: RegExp) => words.some((it) => sign.test(it))
  const microwave = says(/microwave/i)
  const hottest = Math.max(0, ...held.map(({ key, value }) => (/temp/i.test(key) ? celsiusIn(value) : 0)))
  const due: Readonly<Record<CautionAt, boolean>> = {
    always: false,
    'first aid': false,
    pressure: says(/pressure|autoclave/i) || hottest > boilingHere,
    metal: says(/metal.?complex|pre-?metal|chrom(e|ium)|cobalt/i),
    jar: vesselKinds.includes('jar'),
    microwave,
    steam: says(/steam/i) || (vesselKinds.includes('packet') && !microwave),
    powder: factors.some(({ stage }) => stage === 'dye') || says(/powder|\bdyes?\b|depth|stock/i),
    acid: says(/acid|vinegar|citric/i),
  }
  return cautions.filter(({ at }) => due[at])
}

function celsiusIn(value: string | number): number {
  const number = Number.parseFloat(String(value)) || 0
  return /\dF\b|°\s*F|\bF\b/.test(String(value)) ? (number - 32) / 1.8 : number
}
