/**
 * What can be asked of a skein or vessel, as plain data: the web reads it too. `scale` says how it is entered:
 * a number, a grade (1–5 in halves, “3-4” is 3.5) or steps. `better` is the direction in which less worry lies.
 * An outcome may also be of the dyer's own kind: then it is a number, and the rule says which way is better.
 */
export type OutcomeKind = {
  readonly label: string
  readonly unit?: string
  readonly scale: 'number' | 'grade' | 'steps' | 'count' | 'yes-no'
  readonly min?: number
  readonly max?: number
  readonly better: 'smaller' | 'larger' | 'neither'
  /** Taken from readings when they are there. */
  readonly fromReadings?: boolean
}

export const outcomeKinds = {
  dE00: {
    label: 'Loss',
    unit: 'ΔE00',
    scale: 'number',
    min: 0,
    max: 200,
    better: 'smaller',
    fromReadings: true,
  },
  'change grade': { label: 'Change in colour', scale: 'grade', min: 1, max: 5, better: 'larger' },
  staining: { label: 'Staining', scale: 'grade', min: 1, max: 5, better: 'larger' },
  'staining dE76': {
    label: 'Staining, ΔE*ab',
    unit: 'ΔE*ab',
    scale: 'number',
    min: 0,
    max: 200,
    better: 'smaller',
  },
  /** 1 where it bled, 0 where it did not. */
  bled: { label: 'Bled', scale: 'yes-no', min: 0, max: 1, better: 'smaller' },
  'rinses to 4': { label: 'Rinses', scale: 'count', min: 0, max: 40, better: 'smaller' },
  felting: { label: 'Felting', scale: 'steps', min: 1, max: 5, better: 'smaller' },
  evenness: { label: 'Evenness', scale: 'steps', min: 1, max: 5, better: 'smaller' },
  handle: { label: 'Handle', scale: 'steps', min: 1, max: 5, better: 'smaller' },
  shortening: { label: 'Shortening', unit: '%', scale: 'number', min: -25, max: 80, better: 'smaller' },
  'dye left': { label: 'Dye left', unit: '%', scale: 'number', min: 0, max: 100, better: 'smaller' },
  pH: { label: 'pH', scale: 'number', min: 0, max: 14, better: 'neither' },
  lightness: { label: 'L*', scale: 'number', min: 0, max: 100, better: 'neither', fromReadings: true },
  spread: {
    label: 'Spread between places',
    unit: 'ΔE00',
    scale: 'number',
    min: 0,
    max: 200,
    better: 'larger',
  },
  'zone share': {
    label: 'Share of the zone',
    unit: '%',
    scale: 'number',
    min: 0,
    max: 100,
    better: 'neither',
  },
  mcdm: { label: 'Unevenness (MCDM)', unit: 'ΔE00', scale: 'number', min: 0, max: 200, better: 'smaller' },
  'light rating': { label: 'Light fastness', scale: 'number', min: 0, max: 9, better: 'larger' },
} as const satisfies Record<string, OutcomeKind>

export type KnownOutcome = keyof typeof outcomeKinds

/** The kind of an outcome; one's own is a plain number. */
export function outcomeKind(key: string): OutcomeKind {
  const known: OutcomeKind | undefined = Object.hasOwn(outcomeKinds, key)
    ? outcomeKinds[key as KnownOutcome]
    : undefined
  return known ?? { label: key, scale: 'number', better: 'smaller' }
}
