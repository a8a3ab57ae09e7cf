import type { z } from '@hono/zod-openapi'
import { type Fault, pointerTo } from './problem.ts'

/** At most this many faults travel with one refusal; a table of 100,000 wrong rows needs no more to be mended. */
export const mostFaults = 200

type Issue = z.core.$ZodIssue

/** The faults of a failed parse, each with its pointer and a sentence without jargon. */
export function faultsOf(
  error: { readonly issues: readonly Issue[] },
  base: readonly PropertyKey[] = [],
): Fault[] {
  const faults: Fault[] = []
  for (const issue of error.issues) {
    if (faults.length >= mostFaults) break
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys)
        faults.push({
          pointer: pointerTo([...base, ...issue.path, key]),
          detail: 'Nothing of this name is known here.',
        })
    } else faults.push({ pointer: pointerTo([...base, ...issue.path]), detail: sentence(issue) })
  }
  return faults
}

function sentence(issue: Issue): string {
  const read = 'input' in issue ? issue.input : undefined
  switch (issue.code) {
    case 'invalid_type':
      if (read === undefined && issue.message === 'Invalid input: expected nonoptional, received undefined')
        return 'This is missing.'
      return issue.message
    default:
      return issue.message
  }
}

const kinds: Record<string, string> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
  date: 'a date',
  null: 'nothing',
  tuple: 'a list of fixed length',
}

function readAs(input: unknown): string {
  if (input === null) return 'null'
  if (Array.isArray(input)) return 'a list'
  if (typeof input === 'number')
    return Number.isFinite(input) ? `the number ${input}` : 'a number that is not finite'
  if (typeof input === 'string') return `“${input.length > 40 ? `${input.slice(0, 40)}…` : input}”`
  if (typeof input === 'boolean') return String(input)
  return 'an object'
}

/**
 * The words of every fault that a schema finds. Given to Zod once, as its error map, so that no schema has to
 * repeat them; a schema that has something better to say gives its own message.
 */
export function faultInWords(issue: z.core.$ZodRawIssue): string | undefined {
  const { input } = issue
  switch (issue.code) {
    case 'invalid_type': {
      if (input === undefined) return 'This is missing.'
      return `This takes ${kinds[issue.expected] ?? issue.expected}; ${readAs(input)} was read.`
    }
    case 'too_small': {
      const bound = `${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`
      if (issue.origin === 'string')
        return Number(issue.minimum) <= 1 ? 'This is empty.' : `This needs ${bound} characters.`
      if (issue.origin === 'array')
        return `This list needs ${bound}; it has ${Array.isArray(input) ? input.length : 0}.`
      return `This is ${bound}; ${readAs(input)} was read.`
    }
    case 'too_big': {
      const bound = `${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`
      if (issue.origin === 'string') return `This takes ${bound} characters.`
      if (issue.origin === 'array')
        return `This list takes ${bound}; it has ${Array.isArray(input) ? input.length : 'more'}.`
      return `This is ${bound}; ${readAs(input)} was read.`
    }
    case 'invalid_value':
      return `This is one of ${issue.values.map(String).join(', ')}; ${readAs(input)} was read.`
    case 'invalid_format':
      return issue.format === 'uuid'
        ? `An id is a UUID; ${readAs(input)} was read.`
        : `${readAs(input)} is not of the form ${issue.format}.`
    case 'not_multiple_of':
      return `This goes in steps of ${issue.divisor}; ${readAs(input)} was read.`
    case 'invalid_union':
      return input === undefined
        ? 'This is missing.'
        : `${readAs(input)} is none of the forms that are taken here.`
    default:
      return undefined
  }
}
