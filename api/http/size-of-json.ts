/** What a body of JSON may hold, beside its 8 MiB. */
export const mostNested = 64
const mostInOneList = 100_001
const mostLists = 450_000
const mostShapes = 20_000

/** Bodies so short cost nothing to take apart, whatever is in them. */
const short = 64 * 1024

const [quote, backslash, comma, colon] = [34, 92, 44, 58]
const [openList, closeList, openObject, closeObject] = [91, 93, 123, 125]

/**
 * Why a text of JSON is not taken apart: what it holds would keep everybody waiting. Found in one pass over the text;
 * undefined where it may be taken apart. Whether it is JSON at all is not looked at.
 *
 * Each new run of keys within an object is a shape of its own, and thousands of shapes cost more than millions of values.
 *
 * @example
 * [whyTooLarge('{"a":[[1,2],"[["]}'), whyTooLarge('['.repeat(65))] // [undefined, 'This is nested more than 64 deep.']
 */
export function whyTooLarge(text: string, mostValues = 500_000): string | undefined {
  const isShort = text.length <= short
  const seen = new Uint8Array(isShort ? 0 : 2 ** 17)
  const shape = new Uint32Array(mostNested + 1)
  const items = new Uint32Array(mostNested + 1)
  let [depth, lists, values, shapes, word] = [0, 0, 0, 0, 0]
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at)
    if (sign === quote) {
      word = 0
      for (at++; at < text.length; at++) {
        const letter = text.charCodeAt(at)
        if (letter === quote) break
        if (letter === backslash) at++
        word = Math.imul(word ^ letter, 0x01000193)
      }
    } else if (sign === openList || sign === openObject) {
      if (++depth > mostNested) return `This is nested more than ${mostNested} deep.`
      if (++lists > mostLists) return 'This holds more than 450000 lists and objects.'
      shape[depth] = 0
      items[depth] = 1
    } else if (sign === closeList || sign === closeObject) depth = Math.max(0, depth - 1)
    else if (sign === comma) {
      if (++values > mostValues) return `This holds more than ${mostValues} values.`
      const count = (items[depth] ?? 0) + 1
      items[depth] = count
      if (count > mostInOneList) return 'This holds a list of more than 100,001.'
    } else if (sign === colon && !isShort) {
      const mixed = Math.imul((shape[depth] ?? 0) ^ word, 0x85ebca6b)
      shape[depth] = mixed ^ (mixed >>> 15)
      const place = ((shape[depth] ?? 0) ^ ((shape[depth] ?? 0) >>> 17)) & (2 ** 17 - 1)
      if (seen[place] === 0 && ++shapes > mostShapes) return 'This holds too many different keys.'
      seen[place] = 1
    }
  }
  return undefined
}
