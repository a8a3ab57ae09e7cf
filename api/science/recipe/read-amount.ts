export type ReadAmount =
  | { readonly kind: 'amount'; readonly amount: number; readonly unit?: string }
  | { readonly kind: 'blank' }
  | { readonly kind: 'unreadable'; readonly because: string }

const fractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅐': '1/7',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅑': '1/9',
  '⅒': '1/10',
}

const uncounted = /\b(pinch|dash|splash|glug|drizzle|dollop|handful|smidgen|knob|bit|some|few|lots?)\b/i

// A whole number before a fraction, a fraction alone, or a decimal with point or comma; then perhaps a unit.
const mixed = /^([-−]?)(\d{1,9})[\s-]+(\d{1,9})\s?[/⁄]\s?(\d{1,9})(?!\d)\s*(.*)$/
const fraction = /^([-−]?)(\d{1,9})\s?[/⁄]\s?(\d{1,9})(?!\d)\s*(.*)$/
const decimal = /^([-−]?)(\d{1,15}(?:[.,]\d{0,15})?|[.,]\d{1,15})(?!\d)\s*(.*)$/

/**
 * An amount as people write it: `1 1/2`, `1½ tbsp`, `¾`, `12,5 mL`. A comma is a decimal comma,
 * a space in `1 000` sets off thousands.
 *
 * Blank is blank, never zero. What cannot be counted (“a pinch”) comes back with a reason in kind words.
 * The unit is given as it was typed: see `kitchenUnitCalled`.
 *
 * @example
 * readAmount('1½ tbsp') // { kind: 'amount', amount: 1.5, unit: 'tbsp' }
 */
export function readAmount(typed: string | number): ReadAmount {
  if (typeof typed === 'number')
    return Number.isFinite(typed)
      ? { kind: 'amount', amount: typed }
      : { kind: 'unreadable', because: 'This is not a finite number.' }
  const text = typed
    .slice(0, 200)
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (sign) => ` ${fractions[sign]}`)
    .replace(/([-−])\s+(?=\d)/, '$1')
    .replace(/\s+/g, ' ')
    .trim()
    // “1 000” is a thousand; “1 500/1000” is one and a half.
    .replace(
      /^([-−]?\d{1,3})((?: \d{3})+)(?![\d.]* ?[/⁄]|\d)/,
      (_, first, rest) => first + rest.replace(/ /g, ''),
    )
  if (text === '') return { kind: 'blank' }
  const inParts = mixed.exec(text)
  if (inParts) return asAmount(typed, inParts[1], Number(inParts[2]), inParts[3], inParts[4], inParts[5])
  const inFraction = fraction.exec(text)
  if (inFraction) return asAmount(typed, inFraction[1], 0, inFraction[2], inFraction[3], inFraction[4])
  const plain = decimal.exec(text)
  if (plain) return asAmount(typed, plain[1], Number(plain[2]?.replace(',', '.')), '0', '1', plain[3])
  if (uncounted.test(text))
    return {
      kind: 'unreadable',
      because: `“${typed.trim().slice(0, 40)}” cannot be counted. Weigh it, or level it off in a spoon.`,
    }
  return unreadable(typed)
}

function asAmount(
  typed: string,
  sign: string | undefined,
  whole: number,
  above: string | undefined,
  below: string | undefined,
  unit: string | undefined,
): ReadAmount {
  if (Number(below) === 0) return unreadable(typed)
  // A unit begins with a letter or a sign for one; anything else is a second number, or a slip.
  if (unit && !/^[\p{L}°%µ(]/u.test(unit)) return unreadable(typed)
  const amount = (sign ? -1 : 1) * (whole + Number(above) / Number(below))
  return { kind: 'amount', amount, ...(unit ? { unit } : {}) }
}

function unreadable(typed: string): ReadAmount {
  const shown = typed.trim().slice(0, 40)
  return {
    kind: 'unreadable',
    because: `“${shown}” is not an amount that can be read. Write it like 1.5, 1,5 or 1 1/2.`,
  }
}
