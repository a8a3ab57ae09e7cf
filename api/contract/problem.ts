/**
 * Everything that the API can refuse, by name. A refusal leaves as RFC 9457 problem+json; `type` is
 * `/problems/<name>`, a page made from this table. What is thrown and is not a `Problem` is a bug.
 */
export const problems = {
  'malformed-json': { status: 400, title: 'This is not JSON' },
  'sign-in-needed': { status: 401, title: 'Sign in first' },
  'other-origin': { status: 403, title: 'A page of another address may not write here' },
  'wrong-phrase': { status: 403, title: 'This is not the access phrase' },
  'not-found': { status: 404, title: 'There is nothing at this address' },
  'method-not-allowed': { status: 405, title: 'This address does not take that method' },
  'already-there': { status: 409, title: 'Something else stands under this id or name' },
  'rule-locked': { status: 409, title: 'The rule is locked; a later edition changes it' },
  'still-in-use': { status: 409, title: 'Other records need this one' },
  'changed-meanwhile': { status: 412, title: 'Somebody changed this since you read it' },
  'too-large': { status: 413, title: 'This is more than one request may carry' },
  'wrong-media-type': { status: 415, title: 'Send JSON, or CSV where the address takes it' },
  'wrong-host': { status: 421, title: 'The tool does not answer to this name' },
  'at-fault': { status: 422, title: 'Some of this cannot be kept as it is' },
  'not-comparable': { status: 422, title: 'These readings cannot stand in one comparison' },
  'too-many-tries': { status: 429, title: 'Too many wrong tries; wait a little' },
  'database-away': { status: 503, title: 'The database cannot be reached just now' },
  busy: { status: 503, title: 'The records are busy with something long' },
  'version-missing': { status: 428, title: 'Say which version you saw: send If-Match' },
} as const

export type ProblemName = keyof typeof problems

/** One fault: where it is, as a JSON pointer in a fragment (`#/pairs/3/sample/L`), and what to do about it. */
export type Fault = { readonly pointer: string; readonly detail: string }

/** The body of every refusal, as `application/problem+json`. */
export type ProblemBody = {
  readonly type: string
  readonly title: string
  readonly status: number
  readonly detail: string
  readonly errors?: readonly Fault[]
  readonly requestId?: string
}

/**
 * A request that cannot be honoured, in kind words.
 *
 * @example
 * new Problem('not-found', 'There is no trial under this id.').status // 404
 */
export class Problem extends Error {
  readonly problem: ProblemName
  readonly faults: readonly Fault[]

  constructor(problem: ProblemName, detail: string, faults: readonly Fault[] = []) {
    super(detail)
    this.name = 'Problem'
    this.problem = problem
    this.faults = faults
  }

  get status(): (typeof problems)[ProblemName]['status'] {
    return problems[this.problem].status
  }

  get body(): ProblemBody {
    const { status, title } = problems[this.problem]
    return {
      type: `/problems/${this.problem}`,
      title,
      status,
      detail: this.message,
      ...(this.faults.length > 0 ? { errors: this.faults } : {}),
    }
  }
}

/** A pointer from a path: `pointerTo(['pairs', 3, 'sample', 'L'])` is `#/pairs/3/sample/L` (RFC 6901, section 6). */
export function pointerTo(path: readonly PropertyKey[]): string {
  return `#${path.map((step) => `/${String(step).replace(/~/g, '~0').replace(/\//g, '~1')}`).join('')}`
}
