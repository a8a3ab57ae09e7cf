/** How a yarn is put to the test: one of the home protocols, with the conditions that make it repeatable. */
export type Protocol = {
  readonly code: string
  readonly name: string
  readonly kind: 'wash' | 'contact' | 'light' | 'rub'
  readonly celsius?: readonly [lowest: number, highest: number]
  readonly minutes?: readonly [shortest: number, longest: number]
  readonly liquorMlPerGram?: number
  readonly soapGramsPerLitre?: number
  readonly balls?: number
  readonly newtons?: number
  readonly fingerMm?: number
  readonly trackCm?: number
  readonly doubleStrokes?: number
  /** False where it says nothing about use: a control, a hot stress, light that cannot be compared. */
  readonly supportsClaim: boolean
}

/** The protocols of the tool. W2 is the usual wash, X1 the usual light. Near standard tests, never a certificate. */
export const protocols: readonly Protocol[] = [
  { code: 'W1', name: 'cool soak', kind: 'wash', celsius: [20, 25], minutes: [15, 15], supportsClaim: true },
  {
    code: 'W2',
    name: 'warm hand wash',
    kind: 'wash',
    celsius: [40, 40],
    minutes: [30, 30],
    liquorMlPerGram: 50,
    soapGramsPerLitre: 5,
    supportsClaim: true,
  },
  {
    code: 'W3',
    name: 'jar tumble',
    kind: 'wash',
    celsius: [40, 40],
    minutes: [30, 45],
    balls: 10,
    supportsClaim: true,
  },
  { code: 'W4', name: 'machine wool wash', kind: 'wash', celsius: [30, 30], supportsClaim: true },
  {
    code: 'W5',
    name: 'wet contact',
    kind: 'contact',
    celsius: [37, 37],
    minutes: [240, 240],
    supportsClaim: true,
  },
  {
    code: 'W6',
    name: 'hot stress',
    kind: 'wash',
    celsius: [60, 60],
    minutes: [30, 30],
    supportsClaim: false,
  },
  { code: 'X0', name: 'dark twin', kind: 'light', supportsClaim: false },
  { code: 'X1', name: 'window, inside glass', kind: 'light', supportsClaim: true },
  { code: 'X2', name: 'shelf', kind: 'light', supportsClaim: true },
  { code: 'X3', name: 'outdoors', kind: 'light', supportsClaim: false },
  { code: 'X4', name: 'hot car', kind: 'light', supportsClaim: false },
  {
    code: 'rub dry',
    name: 'dry rub',
    kind: 'rub',
    newtons: 9,
    fingerMm: 16,
    trackCm: 10,
    doubleStrokes: 10,
    supportsClaim: true,
  },
  {
    code: 'rub wet',
    name: 'wet rub',
    kind: 'rub',
    newtons: 9,
    fingerMm: 16,
    trackCm: 10,
    doubleStrokes: 10,
    supportsClaim: true,
  },
]

/**
 * The weight to lay on a specimen for a pressure, in kilograms.
 *
 * @throws RangeError when pressure or area is not above 0
 *
 * @example
 * kilogramsFor({ kilopascals: 12.5, squareMillimetres: 4000 }) // 5.0986
 */
export function kilogramsFor(press: { kilopascals: number; squareMillimetres: number }): number {
  if (!(press.kilopascals > 0 && press.squareMillimetres > 0))
    throw new RangeError('A pressure and an area are above 0.')
  return (press.kilopascals * press.squareMillimetres) / 1000 / 9.80665
}
