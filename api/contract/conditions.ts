import { bounds, isVariable, refusalOf, type VariableKey, variableKeys } from './bounds.ts'
import { type Beside, type Conditions, type ConditionValue, countsAs, mayHold } from './condition-value.ts'
import { readDecimal } from './quantity.ts'
import { z } from './schema.ts'

/** An amount as it was entered, in any unit that can be counted in the one of the table. */
export const entered = z.object({
  amount: z.union([z.number(), z.string().max(60)]),
  unit: z.string().max(60),
  strengthPercent: z.preprocess(readDecimal, z.number().optional()).optional(),
})

const held = z.union([z.number(), z.string().max(200), z.boolean(), z.null(), z.object({ entered })])
type Held = z.output<typeof held>

/** More keys than there are variables and factors of one trial together. */
const mostKeys = 200

/**
 * The conditions of a trial, session, vessel or skein: values of the variables, each a number (or text such as
 * “12,5”), null for “not recorded here”, or `{ entered: { amount, unit, strengthPercent? } }`, which comes out as
 * `{ entered, value }` with the value in the unit of the table.
 *
 * Blank text is missing: the key is left out. An impossible value, an unknown key or a unit that cannot be counted
 * is refused at its own place; a doubtful one is kept (see `doubtsAbout`).
 *
 * @param extraKeys  The trial's own factors, which may hold numbers, short text, yes and no.
 *
 * @example
 * conditionsSchema().parse({ steamTime: '12,5', hold: '' }) // { steamTime: 12.5 }
 */
export function conditionsSchema(extraKeys: readonly string[] = []) {
  return z
    .record(z.string().max(200), held)
    .transform((given, ctx): Conditions => {
      const keys = Object.keys(given)
      if (keys.length > mostKeys) {
        ctx.addIssue({ code: 'custom', message: `At most ${mostKeys} conditions stand in one place.` })
        return z.NEVER
      }
      const beside = {
        fibreMass: plainNumber(given, 'fibreMass'),
        acidStrength: plainNumber(given, 'acidStrength'),
      }
      const kept: [string, ConditionValue][] = []
      const fault = (path: string[], message: string) => ctx.addIssue({ code: 'custom', path, message })
      for (const key of keys) {
        const value = given[key]
        if (value === undefined) continue
        if (!mayHold(key, extraKeys)) fault([key], 'No variable of this name is known here.')
        else if (value === null) kept.push([key, null])
        else if (isVariable(key)) variable(key, value, beside, { fault, keep: (it) => kept.push([key, it]) })
        else own(key, value, { fault, keep: (it) => kept.push([key, it]) })
      }
      return Object.fromEntries(kept)
    })
    .openapi({
      type: 'object',
      description: `Values of the variables (${variableKeys.join(', ')}), pressureVessel, or the trial's own factors.`,
    })
}

type Told = {
  readonly fault: (path: string[], message: string) => void
  readonly keep: (value: ConditionValue) => void
}

function variable(key: VariableKey, given: NonNullable<Held>, beside: Beside, { fault, keep }: Told): void {
  if (typeof given === 'object') {
    const counted = countsAs(key, given.entered, beside)
    if (counted.kind === 'fault') fault([key, 'entered', counted.at], counted.detail)
    if (counted.kind === 'value') keep({ entered: given.entered, value: counted.value })
    return
  }
  const value = readDecimal(given)
  if (value === undefined) return
  const refused = typeof value === 'number' ? refusalOf(key, value) : notANumber(key)
  if (refused) fault([key], refused)
  else keep(value as number)
}

function own(key: string, given: NonNullable<Held>, { fault, keep }: Told): void {
  if (key === 'pressureVessel' && typeof given !== 'boolean') fault([key], 'This takes true or false.')
  else if (typeof given === 'object')
    fault([key], 'A factor of your own has no unit to count in; give its value.')
  else if (given !== '') keep(given)
}

function notANumber(key: VariableKey): string {
  const { label, unit } = bounds[key]
  return `${label} is a number${unit === '' ? '' : ` in ${unit}`}, such as 12 or 12,5.`
}

/** A number that another conversion needs, where it can be had without converting anything else. */
function plainNumber(given: Record<string, Held>, key: VariableKey): number | undefined {
  const value = Object.hasOwn(given, key) ? given[key] : undefined
  if (value === null || value === undefined) return undefined
  if (typeof value === 'object') {
    const counted = countsAs(key, value.entered)
    return counted.kind === 'value' ? counted.value : undefined
  }
  const number = readDecimal(value)
  return typeof number === 'number' ? number : undefined
}
