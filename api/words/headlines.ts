import type { Verdict } from '#api/science/verdicts/verdict.ts'
import { counted, listed, margin, sentenceCase } from './numbers.ts'

/** One thing that a headline speaks of: a level, an arm, a colour, a batch. */
export type Said = {
  /** As a headline names it: “35 minutes of steam”, “citric acid”. */
  readonly name: string
  readonly answer: Verdict
  /** Of a limit that was not met, what was seen: “wool stained 2-3”. */
  readonly failed?: string | undefined
  /** Of a colour beside the blue wools, where it stands: “blue wool 1-2”. */
  readonly placed?: string | undefined
  readonly n: number
  readonly planned: number
}

type Units = { readonly one: string; readonly many: string }

/**
 * A ladder, stepped down from the most: the least level that is enough, or why there is none.
 *
 * @example
 * ladderHeadline({ least: '35 minutes of steam', answer: 'holds', bad: 'too short' }) // '35 minutes of steam is enough.'
 */
export function ladderHeadline(it: {
  readonly answer: Verdict
  readonly least?: string | undefined
  /** The level that was judged first. */
  readonly first?: string | undefined
  /** The most that was tried, where even that does not do. */
  readonly notReached?: string | undefined
  readonly referenceBreaks?: boolean | undefined
  readonly bad: string
  readonly windowEmpty?: boolean | undefined
  readonly more?: number | null | undefined
  readonly units?: Units | undefined
  readonly blocked?: string | undefined
}): string {
  const { answer, least, first, notReached, bad, units = { one: 'session', many: 'sessions' } } = it
  if (answer === 'holds' && least !== undefined)
    return it.windowEmpty
      ? `${sentenceCase(least)} is enough, but the window is empty.`
      : `${sentenceCase(least)} is enough.`
  if (answer === 'does-not-hold') {
    if (notReached !== undefined)
      return `Not reached: ${notReached}, the most that was tried, is ${bad === 'too short' ? 'not enough' : bad}.`
    if (it.referenceBreaks && first !== undefined)
      return `${sentenceCase(first)} does not meet the rule itself.`
    return `${sentenceCase(first ?? 'no level')} is ${bad}.`
  }
  if (it.blocked !== undefined) return `Not settled: ${it.blocked}`
  const may = first === undefined ? '' : ` ${first} may be enough.`
  const dye = it.more === null || it.more === undefined ? '' : ` Dye ${counted(it.more, moreOf(units))}.`
  return may === '' && dye === '' ? 'Not settled.' : `Not settled:${may}${dye}`
}

const moreOf = ({ one, many }: Units): Units => ({ one: `more ${one}`, many: `more ${many}` })

/**
 * Two arms or more against one: as good as, better than, the same as. Every arm is named.
 *
 * @example
 * armsHeadline('better', [{ name: 'hot detergent', answer: 'holds', n: 8, planned: 8 }, { name: 'cold vinegar', answer: 'does-not-hold', n: 8, planned: 8 }], { against: 'plain water' }) // 'Hot detergent is better than plain water; cold vinegar is no better than plain water.'
 */
export function armsHeadline(
  question: 'no-worse' | 'alike' | 'better',
  arms: readonly Said[],
  {
    against,
    within,
    blocked,
  }: { against: string; within?: number | undefined; blocked?: string | undefined },
): string {
  if (blocked !== undefined && arms.every(({ answer }) => answer === 'not-settled'))
    return `Not settled: ${blocked}`
  const parts = arms.map((arm) => armInWords(question, arm, { against, within }))
  return `${sentenceCase(parts.join('; '))}.`
}

function armInWords(
  question: 'no-worse' | 'alike' | 'better',
  { name, answer, failed }: Said,
  { against, within }: { against: string; within?: number | undefined },
): string {
  const because = failed === undefined ? '' : `: ${failed}`
  if (question === 'better') {
    if (answer === 'holds') return `${name} is better than ${against}`
    if (answer === 'does-not-hold') return `${name} is no better than ${against}${because}`
    return `${name} is not shown to be better than ${against}`
  }
  if (question === 'alike') {
    const about = within === undefined ? '' : `, within ${margin(within)}`
    if (answer === 'holds') return `${name} and ${against} come out the same${about}`
    if (answer === 'does-not-hold') return `${name} and ${against} differ${because}`
    return `not settled whether ${name} and ${against} come out the same`
  }
  if (answer === 'holds') return `${name} is as good as ${against}`
  if (answer === 'does-not-hold')
    return failed === undefined ? `${name} is worse than ${against}` : `${name} fails${because}`
  return `not settled whether ${name} is as good as ${against}`
}

/**
 * Each by its own limits: colourways by lot, arms or stopping points by session.
 *
 * @example
 * limitsHeadline([{ name: 'Moss', answer: 'holds', n: 5, planned: 5 }, { name: 'Turquoise', answer: 'does-not-hold', failed: 'wool stained 2-3', n: 5, planned: 5 }, { name: 'Slate', answer: 'not-settled', n: 3, planned: 5 }], { one: 'lot', many: 'lots' }) // 'Moss passes: 5 of 5 lots; Turquoise fails: wool stained 2-3; Slate: 3 of 5 planned lots are in.'
 */
export function limitsHeadline(things: readonly Said[], units: Units): string {
  const passed = things.filter(({ answer }) => answer === 'holds')
  const parts: string[] = []
  const alike = new Set(passed.map(({ n }) => n))
  if (passed.length > 1 && alike.size === 1)
    parts.push(`${listed(passed.map(({ name }) => name))} pass: ${ofAll(passed[0]?.n ?? 0, units)} each`)
  else parts.push(...passed.map(({ name, n }) => `${name} passes: ${ofAll(n, units)}`))
  for (const { name, answer, failed, n, planned } of things) {
    if (answer === 'does-not-hold') parts.push(`${name} fails${failed === undefined ? '' : `: ${failed}`}`)
    if (answer === 'not-settled')
      parts.push(
        n < planned
          ? `${name}: ${n} of ${planned} planned ${planned === 1 ? `${units.one} is` : `${units.many} are`} in`
          : `${name} is not settled`,
      )
  }
  return parts.length === 0 ? 'Not settled.' : `${sentenceCase(parts.join('; '))}.`
}

const ofAll = (n: number, { one, many }: Units): string => `${n} of ${n} ${n === 1 ? one : many}`

/**
 * Batches against the kept standard.
 *
 * @example
 * standardHeadline([{ name: 'three pots', answer: 'holds', n: 3, planned: 3 }], { within: 2 }) // 'The recipe repeats, within 2.0.'
 */
export function standardHeadline(ways: readonly Said[], { within }: { within?: number | undefined }): string {
  const about = within === undefined ? '' : `, within ${margin(within)}`
  const [only] = ways
  if (ways.length === 1 && only) {
    if (only.answer === 'holds') return `The recipe repeats${about}.`
    if (only.answer === 'does-not-hold')
      return `The recipe does not repeat${only.failed === undefined ? '' : `: ${only.failed}`}.`
    return only.n < only.planned
      ? `Not settled: ${only.n} of ${only.planned} planned batches are in.`
      : 'Not settled whether the recipe repeats.'
  }
  const parts = ways.map(({ name, answer, failed }) =>
    answer === 'holds'
      ? `${name} repeats${about}`
      : answer === 'does-not-hold'
        ? `${name} does not repeat${failed === undefined ? '' : `: ${failed}`}`
        : `${name} is not settled`,
  )
  return parts.length === 0 ? 'Not settled.' : `${sentenceCase(parts.join('; '))}.`
}

/**
 * Colours beside the blue wools.
 *
 * @example
 * lightHeadline([{ name: 'Teal', answer: 'holds', n: 3, planned: 3 }], 4) // 'Teal stands light like blue wool 4.'
 * @example
 * lightHeadline([{ name: 'pink', answer: 'does-not-hold', placed: 'blue wool 1-2', n: 3, planned: 3 }], 4) // 'Pink stands light like blue wool 1-2, less than blue wool 4.'
 */
export function lightHeadline(colours: readonly Said[], wool: number | undefined): string {
  if (wool === undefined)
    return colours.length === 0
      ? 'Not settled.'
      : `${sentenceCase(colours.map(({ name, placed }) => `${name} ${placed === undefined ? 'is not placed yet' : standsLike(placed)}`).join('; '))}.`
  const parts = colours.map(({ name, answer, placed }) =>
    answer === 'holds'
      ? `${name} ${standsLike(placed ?? `blue wool ${wool}`)}`
      : answer === 'does-not-hold'
        ? `${name} ${placed === undefined ? 'stands light' : `${standsLike(placed)},`} less than blue wool ${wool}`
        : `${name} is not settled`,
  )
  return parts.length === 0 ? 'Not settled.' : `${sentenceCase(parts.join('; '))}.`
}

/** “stands light like blue wool 3-4”; off the card “stands light below blue wool 1”. */
const standsLike = (placed: string): string =>
  `stands light ${placed.startsWith('blue wool') ? 'like ' : ''}${placed}`

/**
 * Open halves against covered ones, on cards without blue wools.
 *
 * @example
 * coveredHeadline([{ name: 'Teal', answer: 'does-not-hold', n: 3, planned: 3 }], 1) // 'Teal changed more in the light than under cover, by more than 1.0.'
 */
export function coveredHeadline(colours: readonly Said[], within: number | undefined): string {
  const by = within === undefined ? '' : margin(within)
  const parts = colours.map(({ name, answer }) =>
    answer === 'holds'
      ? `${name} changed no more in the light than under cover, within ${by}`
      : answer === 'does-not-hold'
        ? `${name} changed more in the light than under cover, by more than ${by}`
        : `${name} is not settled`,
  )
  return parts.length === 0 ? 'Not settled.' : `${sentenceCase(parts.join('; '))}.`
}

/**
 * A way of measuring.
 *
 * @example
 * seesHeadline('holds', 1) // 'This way of measuring can see a margin of 1.0.'
 */
export function seesHeadline(answer: Verdict, within: number | undefined): string {
  const what = within === undefined ? 'the margin' : `a margin of ${margin(within)}`
  if (answer === 'holds') return `This way of measuring can see ${what}.`
  if (answer === 'does-not-hold') return `This way of measuring cannot see ${what}.`
  return `Not settled whether this way of measuring can see ${what}.`
}
