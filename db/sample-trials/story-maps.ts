/**
 * How each of the sample tables is read: the map of its columns, and the answers that an import asks for once. Used by
 * the example studio and by the tests. The data are invented.
 */
export type StoryMap = {
  readonly file: string
  /** Only what the headings alone do not tell; the rest is guessed. */
  readonly columns?: readonly StoryColumn[]
  readonly between?: Readonly<Record<string, number>>
  readonly ownVessel?: boolean
  readonly blankRows?: string
  readonly standard?: string
  readonly twinsAreParts?: boolean
}
type StoryColumn = Readonly<Record<string, unknown>> & { readonly heading: string; readonly as: string }

const window = (heading: string, days: number): StoryColumn => ({
  heading,
  as: 'outcome',
  kind: 'dE00',
  wear: { 'X1 days': days },
})
const remedy = (heading: string, level: string): StoryColumn => ({
  heading,
  as: 'outcome',
  kind: 'staining dE76',
  fibre: 'wool',
  wear: { W5: 1 },
  of: 'part',
  level,
  factor: 'remedy',
})
const shade = (heading: string, level: string): StoryColumn => ({
  heading,
  as: 'outcome',
  kind: 'dE00',
  of: 'part',
  level,
  factor: 'remedy',
  wear: {},
})
const staining = (heading: string, fibre: string): StoryColumn => ({
  heading,
  as: 'outcome',
  kind: 'staining',
  fibre,
  wear: { W2: 5 },
})

export const storyMaps = {
  steamTimeLadder: { file: 'steam-time-ladder.csv', between: { W2: 3 }, ownVessel: true },
  acidByBase: {
    file: 'acid-by-base.csv',
    columns: [{ heading: 'base', as: 'level', factor: 'base' }],
    ownVessel: true,
  },
  classSeparation: { file: 'class-separation.csv', ownVessel: true, blankRows: 'boiled dry' },
  colourwayWashClaims: {
    file: 'colourway-wash-claims.csv',
    columns: [
      { heading: 'dE00_after_1', as: 'outcome', kind: 'dE00', wear: { W2: 1 } },
      { heading: 'dE00_after_5', as: 'outcome', kind: 'dE00', wear: { W2: 5 } },
      staining('stain_wool', 'wool'),
      staining('stain_nylon', 'nylon'),
      staining('stain_cotton', 'cotton'),
      {
        heading: 'wet_contact_wool',
        as: 'outcome',
        kind: 'staining',
        fibre: 'wool',
        of: 'part',
        wear: { W5: 1 },
      },
      {
        heading: 'crock_dry',
        as: 'outcome',
        kind: 'staining',
        fibre: 'cotton',
        of: 'part',
        wear: { 'rub dry': 10 },
      },
      {
        heading: 'crock_wet',
        as: 'outcome',
        kind: 'staining',
        fibre: 'cotton',
        of: 'part',
        wear: { 'rub wet': 10 },
      },
    ],
    ownVessel: true,
  },
  windowLight: {
    file: 'window-light.csv',
    columns: [
      window('dE00_wk2', 14),
      window('dE00_wk4', 28),
      window('dE00_wk7', 49),
      window('dE00_wk10', 70),
      { heading: 'dark_twin_wk10', as: 'outcome', kind: 'dE00', role: 'dark twin', wear: { 'X0 days': 70 } },
    ],
  },
  scaleUp: { file: 'scale-up.csv', standard: 'sample 50 g', ownVessel: true },
  bleedingRescue: {
    file: 'bleeding-rescue.csv',
    columns: [
      remedy('cold_water', 'cold water'),
      remedy('cold_vinegar', 'cold vinegar'),
      remedy('hot_detergent_60C', 'hot detergent'),
      remedy('reheat_acid_85C', 'reheating with acid'),
      shade('dE00_shade_hot', 'hot detergent'),
      shade('dE00_shade_reheat', 'reheating with acid'),
    ],
    ownVessel: true,
  },
  phoneNoise: { file: 'phone-noise.csv', twinsAreParts: true },
} as const satisfies Record<string, StoryMap>
