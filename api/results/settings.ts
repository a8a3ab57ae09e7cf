import type { ReadingKept } from '#db/histories.ts'

/** What decides whether two readings may stand in one comparison. */
export type Settings = Pick<
  ReadingKept,
  'method' | 'illuminant' | 'observer' | 'geometry' | 'apertureMm' | 'inFrameStandardId' | 'sittingId' | 'wet'
>

// What is not said is what the trade takes it to be: daylight D65 and the observer of 10°.
const illuminantOf = (it: Settings) => plain(it.illuminant) || 'd65'
const observerOf = (it: Settings) => plain(it.observer) || '10'

/** What the comparable have in common, in one text: two readings compare if and only if theirs are the same. */
export function settingsOf(reading: Settings): string {
  const { method, geometry, apertureMm, inFrameStandardId, sittingId, wet } = reading
  const frame =
    method === 'instrument' ? '' : inFrameStandardId ? `with ${inFrameStandardId}` : `in ${sittingId}`
  return [
    method,
    illuminantOf(reading),
    observerOf(reading),
    plain(geometry),
    apertureMm ?? '',
    frame,
    wet ? 'wet' : 'dry',
  ].join('|')
}

/** Why two readings cannot stand in one comparison, as a sentence; undefined when they can. */
export function whyNotComparable(one: Settings, other: Settings): string | undefined {
  if (settingsOf(one) === settingsOf(other)) return undefined
  if (one.wet !== other.wet) return 'One was read wet and the other dry.'
  if (one.method !== other.method) return `One is by ${one.method} and the other by ${other.method}.`
  const differing: readonly [string, string | number, string | number][] = [
    ['illuminant', illuminantOf(one).toUpperCase(), illuminantOf(other).toUpperCase()],
    ['observer', `${observerOf(one)}°`, `${observerOf(other)}°`],
    ['geometry', one.geometry ?? 'not recorded', other.geometry ?? 'not recorded'],
    ['aperture', one.apertureMm ?? 'not recorded', other.apertureMm ?? 'not recorded'],
  ]
  for (const [what, here, there] of differing) {
    if (plain(String(here)) !== plain(String(there))) return `The ${what} differs: ${here} and ${there}.`
  }
  return 'They are of different sittings without the same standard in the frame.'
}

function plain(text: string | null): string {
  return (text ?? '').toLowerCase().replace(/[°\s]/g, '')
}
