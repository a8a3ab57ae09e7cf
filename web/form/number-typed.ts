/**
 * A number as it was typed: “12,5” is 12.5, the grade “3-4” is 3.5. Undefined when it is blank or no number.
 *
 * @example
 * [numberTyped('12,5'), numberTyped('3-4'), numberTyped('about 3')] // [12.5, 3.5, undefined]
 */
export function numberTyped(typed: string): number | undefined {
  const text = typed.trim()
  const grade = /^([1-4])\s*[-–/]\s*([2-5])$/.exec(text)
  if (grade) {
    const [low, high] = [Number(grade[1]), Number(grade[2])]
    return high === low + 1 ? low + 0.5 : undefined
  }
  if (!/^[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/.test(text)) return undefined
  return Number(text.replace(',', '.').replace('−', '-'))
}

/**
 * A whole number within bounds, or why it is none.
 *
 * @example
 * wholeTyped('4', { min: 1, max: 50 }) // { value: 4 }
 * @example
 * wholeTyped('0', { min: 1, max: 50 }) // { fault: 'A whole number from 1 to 50.' }
 */
export function wholeTyped(
  typed: string,
  { min, max }: { readonly min: number; readonly max: number },
): { readonly value: number; readonly fault?: never } | { readonly fault: string; readonly value?: never } {
  const value = numberTyped(typed)
  if (value === undefined || !Number.isInteger(value) || value < min || value > max)
    return { fault: `A whole number from ${min} to ${max}.` }
  return { value }
}
