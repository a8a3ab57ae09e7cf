import { randomUUID } from 'node:crypto'

/** A record as it was sent, and what was answered each time that it was. */
export type SentRecord = {
  readonly id: string
  readonly name: string
  /** A status, or 'no answer' where the tool itself was not there. */
  readonly answers: (number | 'no answer')[]
  /** The problem of each refusal, or what came in its place. */
  readonly problems: string[]
}

export const isAcknowledged = ({ answers }: SentRecord): boolean =>
  answers.at(-1) === 200 || answers.at(-1) === 201

/**
 * Writes one record after the other, each under an id of its own, and sends the same again until it is acknowledged.
 * Ends when it may, with the record at hand acknowledged; `isOver` ends it however things stand.
 */
export async function writeStubbornly(
  address: string,
  {
    bodyOf,
    mayEnd,
    isOver,
  }: {
    bodyOf: (record: { id: string; name: string }) => object
    mayEnd: () => boolean
    isOver: () => boolean
  },
): Promise<SentRecord[]> {
  const sent: SentRecord[] = []
  while (!mayEnd() && !isOver()) {
    const id = randomUUID()
    const record: SentRecord = { id, name: `Kept ${id}`, answers: [], problems: [] }
    sent.push(record)
    while (!isAcknowledged(record) && !isOver()) {
      if (record.answers.length > 0) await new Promise((resolve) => setTimeout(resolve, 50))
      await send(address, bodyOf(record), record)
    }
  }
  return sent
}

async function send(address: string, body: object, record: SentRecord): Promise<void> {
  try {
    const answer = await fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
    const text = await answer.text()
    record.answers.push(answer.status)
    if (!answer.ok) record.problems.push(problemIn(answer.headers.get('content-type'), text))
  } catch {
    record.answers.push('no answer')
  }
}

function problemIn(type: string | null, text: string): string {
  return type === 'application/problem+json' ? (JSON.parse(text) as { type: string }).type : text
}
