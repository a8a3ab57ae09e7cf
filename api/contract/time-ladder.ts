/** What of a factor says whether its levels are times in one pot. */
type TimedFactor = {
  readonly kind: string
  readonly key: string
  readonly unit: string | null
}

const stayed = /^(preSoak|hold|steamTime)$|steam|simmer|soak/i

/**
 * Whether the levels of a factor are times that vessels stay in one heat or one soak: then they go in one after the
 * other, longest first, and come out together, and the order of working is not drawn but follows from the times.
 *
 * @example
 * [isTimeLadder({ key: 'steamTime', kind: 'number', unit: 'min' }), isTimeLadder({ key: 'acid', kind: 'number', unit: 'mL per 100 g' })] // [true, false]
 */
export function isTimeLadder({ kind, key, unit }: TimedFactor): boolean {
  return kind === 'number' && stayed.test(key) && /^(min|minutes?|h|hours?|s|d)$/.test(unit ?? '')
}
