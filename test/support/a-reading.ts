import type { ReadingSeen } from '#db/trial-record.ts'

/** A reading as a record holds it: in a sitting of its own instrument, dry, five spots, a day at nine in the morning. */
export function aReading({
  skein,
  sitting,
  lab: [meanL, meanA, meanB],
  on,
  ...rest
}: {
  skein: string
  sitting: string
  lab: readonly [number, number, number]
  /** A day or a moment; without it the time is not known. */
  on?: string
} & Partial<ReadingSeen>): ReadingSeen {
  return {
    id: `#${skein} ${sitting}`,
    skeinId: `#${skein}`,
    wear: {},
    wet: false,
    placing: 1,
    meanL,
    meanA,
    meanB,
    spotsN: 5,
    blindCode: null,
    supersedesId: null,
    reason: null,
    takenAt: on === undefined ? null : new Date(on.length > 10 ? on : `${on}T09:00Z`),
    createdAt: new Date('2026-06-01T09:00Z'),
    sittingId: `#${sitting}`,
    method: 'instrument',
    instrumentId: '#meter',
    illuminant: 'D65',
    observer: '10',
    geometry: null,
    apertureMm: null,
    inFrameStandardId: null,
    person: null,
    ...rest,
  }
}
