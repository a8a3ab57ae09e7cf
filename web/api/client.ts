import type { Fault, ProblemBody } from '#api/contract/problem.ts'
import { isSignInNeeded } from '#web/state/signing-in.ts'

/** What the API refused, in its own kind words, with the faults of single fields. */
export class Refused extends Error {
  /** 0 when nothing answered at all. */
  readonly status: number
  /** The name from the table of problems, as `rule-locked`; `no-connection` or `broken` where there is none. */
  readonly problem: string
  readonly faults: readonly Fault[]
  readonly requestId: string | undefined

  constructor(
    sentence: string,
    about: { status: number; problem: string; faults?: readonly Fault[]; requestId?: string | undefined },
  ) {
    super(sentence)
    this.name = 'Refused'
    this.status = about.status
    this.problem = about.problem
    this.faults = about.faults ?? []
    this.requestId = about.requestId
  }

  /** True when the answer is a mistake of the tool, not something to mend in what was sent. */
  get isBug(): boolean {
    return this.status === 500 || this.problem === 'broken'
  }
}

/** What both `fetch` and Hono's client give back. */
type Answer<T> = {
  readonly ok: boolean
  readonly status: number
  readonly headers: { get(name: string): string | null }
  json(): Promise<T>
}

/**
 * The value of an answer, or `Refused`.
 * `const trial = await answerOf(trials[':id'].$get({ param: { id } }))`
 */
export async function answerOf<T>(asked: Promise<Answer<T>> | Answer<T>): Promise<T> {
  const response = await answered(asked)
  if (response.ok) return response.status === 204 ? (undefined as T) : await response.json()
  const refused = await refusalOf(response)
  if (refused.problem === 'sign-in-needed') isSignInNeeded.value = true
  throw refused
}

export type Ask = {
  readonly method?: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE'
  /** Sent as JSON. */
  readonly body?: unknown
  /** Sent as it is, with its own type: a table as CSV. */
  readonly text?: { readonly type: string; readonly words: string }
  /** The version that a change was made from. */
  readonly ifMatch?: string
  readonly signal?: AbortSignal
}

/**
 * Asks an address of the API. The type of the answer is what the contract says of that address.
 * `const bases = await ask<Base[]>('/api/bases')`
 */
export function ask<T>(address: string, { method, body, text, ifMatch, signal }: Ask = {}): Promise<T> {
  const headers: Record<string, string> = { accept: 'application/json' }
  if (body !== undefined) headers['content-type'] = 'application/json'
  if (text !== undefined) headers['content-type'] = text.type
  if (ifMatch !== undefined) headers['if-match'] = ifMatch
  const payload = text?.words ?? (body === undefined ? undefined : JSON.stringify(body))
  return answerOf<T>(
    fetch(address, {
      method: method ?? (payload === undefined ? 'GET' : 'POST'),
      headers,
      ...(payload === undefined ? {} : { body: payload }),
      ...(signal === undefined ? {} : { signal }),
    }),
  )
}

/** The faults of one field: those at its pointer (`#/margin`) or below it (`#/margin/amount`). */
export function faultsAt(refused: unknown, pointer: string): readonly string[] {
  if (!(refused instanceof Refused)) return []
  return refused.faults
    .filter((fault) => fault.pointer === pointer || fault.pointer.startsWith(`${pointer}/`))
    .map(({ detail }) => detail)
}

async function answered<T>(asked: Promise<Answer<T>> | Answer<T>): Promise<Answer<T>> {
  try {
    return await asked
  } catch (cause) {
    if (cause instanceof Error && cause.name === 'AbortError') throw cause
    throw new Refused('No connection. Try again when it is back.', {
      status: 0,
      problem: 'no-connection',
    })
  }
}

async function refusalOf(response: Answer<unknown>): Promise<Refused> {
  const fallbackId = response.headers.get('x-request-id') ?? undefined
  const body = await bodyOf(response)
  if (body === undefined)
    return new Refused('Something broke here. It may not have been stored: look before you try again.', {
      status: response.status,
      problem: 'broken',
      requestId: fallbackId,
    })
  return new Refused(body.detail ?? body.title ?? 'This cannot be done as asked.', {
    status: response.status,
    problem: body.type?.replace(/^.*\/problems\//, '') ?? 'broken',
    faults: body.errors ?? [],
    requestId: body.requestId ?? fallbackId,
  })
}

async function bodyOf(response: Answer<unknown>): Promise<Partial<ProblemBody> | undefined> {
  const type = response.headers.get('content-type') ?? ''
  if (!type.includes('json')) return undefined
  try {
    return (await response.json()) as Partial<ProblemBody>
  } catch {
    return undefined
  }
}
