import { inWords } from './number-in-words.ts'

/**
 * What a piece has been through when it is read: from protocol to amount. `{}` is untouched, `{"W2": 3}` three warm
 * hand washes, `{"X1 days": 28}` four weeks in the window. Light counts days, rubbing strokes, the rest cycles.
 */
export type Wear = Record<string, number>

/** The axes along which a piece can be worn, with the words for one and for several. */
export const wearAxes = {
  W1: { one: 'cool soak', several: 'cool soaks' },
  W2: { one: 'warm hand wash', several: 'warm hand washes' },
  W3: { one: 'jar tumble', several: 'jar tumbles' },
  W4: { one: 'machine wool wash', several: 'machine wool washes' },
  W5: { one: 'wet contact', several: 'wet contacts' },
  W6: { one: 'hot stress wash', several: 'hot stress washes' },
  'X0 days': { one: 'day in the dark', several: 'days in the dark' },
  'X1 days': { one: 'day in the window', several: 'days in the window' },
  'X2 days': { one: 'day on the shelf', several: 'days on the shelf' },
  'X3 days': { one: 'day outdoors', several: 'days outdoors' },
  'X4 days': { one: 'day in a hot car', several: 'days in a hot car' },
  'rub dry': { one: 'dry rub stroke', several: 'dry rub strokes' },
  'rub wet': { one: 'wet rub stroke', several: 'wet rub strokes' },
} as const

export type WearAxis = keyof typeof wearAxes
export const wearAxisNames = Object.keys(wearAxes) as WearAxis[]

/**
 * A wear as text, keys in order, so that equal wears have equal keys.
 *
 * @example
 * wearKey({ 'rub wet': 10, W2: 5 }) // 'W2=5,rub wet=10'
 */
export function wearKey(map: Wear): string {
  return Object.keys(map)
    .sort()
    .map((axis) => `${axis}=${map[axis]}`)
    .join(',')
}

/**
 * A wear in words. The amount of a rub counts the strokes of one test.
 *
 * @example
 * [wearInWords({ W2: 3 }), wearInWords({ 'rub dry': 10 })] // ['three warm hand washes', 'one dry rub test (10 strokes)']
 */
export function wearInWords(map: Wear): string {
  const parts = Object.keys(map)
    .sort()
    .map((axis) => {
      const amount = map[axis] ?? 0
      if (axis === 'rub dry' || axis === 'rub wet')
        return `one ${axis === 'rub dry' ? 'dry' : 'wet'} rub test (${amount} ${amount === 1 ? 'stroke' : 'strokes'})`
      const words = wearAxes[axis as WearAxis] ?? { one: axis, several: axis }
      return `${inWords(amount)} ${amount === 1 ? words.one : words.several}`
    })
  return parts.length === 0 ? 'untouched' : parts.join(' and ')
}
