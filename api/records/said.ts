import { Problem } from '#api/contract/problem.ts'

const most = 1000
const parameter = (name: string, what: string) => ({
  name,
  in: 'header' as const,
  required: false,
  description: `${what}, for the journal; percent-encoded UTF-8`,
  schema: { type: 'string' as const },
})

/** Who makes a change, and why: headers that every change of what is judged may carry, for the OpenAPI document. */
export const saidParameters = [parameter('x-who', 'Who'), parameter('x-reason', 'Why')]

/** Who made a change, and why, where they said so. */
export type Said = { readonly who: string | null; readonly reason: string | null }

/** Nobody said anything: a change that the tool makes of itself. */
export const unsaid: Said = { who: null, reason: null }

/**
 * Reads who and why from the headers of a request. A header holds no letters beyond Latin-1, so they come
 * percent-encoded; plain text is taken as it is.
 *
 * @throws Problem at-fault for more than 1000 characters
 */
export function saidIn({
  req,
}: {
  readonly req: { readonly header: (name: string) => string | undefined }
}): Said {
  return { who: textIn(req.header('x-who'), 'x-who'), reason: textIn(req.header('x-reason'), 'x-reason') }
}

function textIn(sent: string | undefined, name: string): string | null {
  const text = decoded(sent ?? '').trim()
  if (text.length > most || text.includes('\u0000')) {
    throw new Problem('at-fault', 'The journal cannot keep this.', [
      { pointer: `#/header/${name}`, detail: `This takes text of at most ${most} characters.` },
    ])
  }
  return text === '' ? null : text
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}
