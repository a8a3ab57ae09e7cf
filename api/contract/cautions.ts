/** At what a caution is due: a kind of vessel, a way of heating, or a stuff that is handled. */
export type CautionAt = 'jar' | 'steam' | 'microwave' | 'powder' | 'acid' | 'always'

export type SafetyCaution = {
  readonly at: CautionAt
  /** “Jars”, as a note is headed. */
  readonly title: string
  readonly text: string
}

/** What to mind at the bench. The one list: the plan, the bench sheet and the page on method print from it. */
export const cautions: readonly SafetyCaution[] = [
  {
    at: 'always',
    title: 'Pots',
    text: 'Dye pots, spoons and microwaves are never for food again, food-grade colour or not.',
  },
  {
    at: 'powder',
    title: 'Powder',
    text: 'Dye powder is a sensitiser: breathed in, it can bring on asthma for good. Wear an FFP2 or N95 mask, work out of draughts over damp paper, and make the stock once. Gloves, apron, eye protection.',
  },
  {
    at: 'jar',
    title: 'Jars',
    text: 'Lids loose, never screwed tight: a closed jar builds up pressure and can burst. Use heat-proof glass without chips, on a rack or cloth, warmed and cooled with its water. Never set hot glass on a cold or wet surface.',
  },
  {
    at: 'steam',
    title: 'Steam',
    text: 'Steam burns: lid away from you, tongs, cool before you open, never boil dry.',
  },
  {
    at: 'microwave',
    title: 'Microwave',
    text: 'Yarn wet through, packet vented, no metal (clips, foil, metallic thread). Two minutes at a time at most, then let it stand and look. Never leave it: yarn that dries out chars and can catch fire.',
  },
  {
    at: 'acid',
    title: 'Acid',
    text: 'Household acid only, never with bleach. Air the room when vinegar is hot.',
  },
  {
    at: 'always',
    title: 'Children and animals',
    text: 'Keep them away; someone watches over learners.',
  },
  {
    at: 'always',
    title: 'What is left',
    text: 'Use up the dye, let the bath cool, bring it near neutral with a little soda, then the drain if your local rules allow; care with septic tanks and wells.',
  },
]

/** What of a trial says which cautions are due at its bench. */
export type BenchSaid = {
  readonly vesselKinds: readonly string[]
  readonly factors: readonly { readonly key: string; readonly stage: string }[]
  /** What is held the same, in a person’s own words. */
  readonly held: readonly { readonly key: string; readonly value: string | number }[]
}

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
  const due: Readonly<Record<CautionAt, boolean>> = {
    always: false,
    jar: vesselKinds.includes('jar'),
    microwave,
    steam: says(/steam/i) || (vesselKinds.includes('packet') && !microwave),
    powder: factors.some(({ stage }) => stage === 'dye') || says(/powder|\bdyes?\b|depth|stock/i),
    acid: says(/acid|vinegar|citric/i),
  }
  return cautions.filter(({ at }) => due[at])
}
