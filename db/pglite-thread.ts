import { Worker } from 'node:worker_threads'
import { type PGlite, protocol } from '@electric-sql/pglite'

export type WorkerStart = { readonly folder: string; readonly copy?: Uint8Array }
export type Order =
  | { readonly id: number; readonly kind: 'wire'; readonly bytes: Uint8Array }
  | { readonly id: number; readonly kind: 'copy' | 'close' }
export type Answer =
  | { readonly id: number; readonly bytes: Uint8Array }
  | { readonly id: number; readonly error: string }

type Waiting = { resolve: (bytes: Uint8Array) => void; reject: (error: Error) => void }

export type PgliteThread = {
  /** What PGlite's pool configuration asks of a database: a promise that it is ready, and the wire. */
  readonly database: PGlite
  /** The whole data folder as a gzipped tar, of one moment. */
  copy(): Promise<Uint8Array>
  close(): Promise<void>
}

// Sync, Flush, simple Query and the COPY messages ask for an answer; Parse, Bind, Describe, Execute and Close wait for one of them.
const asking = new Set([...'SHQdcf'].map((letter) => letter.charCodeAt(0)))

/** Opens the embedded database of a folder in a worker thread; `lost` is told if that thread ever ends by itself. */
export async function startPgliteThread(
  start: WorkerStart,
  { lost }: { lost: (error: Error) => void },
): Promise<PgliteThread> {
  const worker = startWorker(start)
  const waiting = new Map<number, Waiting>()
  let count = 0
  let ended: Error | undefined
  let closing = false

  function end(error: Error): void {
    if (ended) return
    ended = error
    for (const it of waiting.values()) it.reject(error)
    waiting.clear()
    if (!closing) lost(error)
  }
  const gone = new Promise<void>((resolve) => worker.once('exit', () => resolve()))
  worker.on('error', end)
  worker.on('exit', () => end(new Error('The embedded database has stopped.')))
  worker.on('message', (answer: Answer) => {
    const it = waiting.get(answer.id)
    waiting.delete(answer.id)
    // An idle database does not keep a script alive; an unanswered question does.
    if (waiting.size === 0) worker.unref()
    if ('error' in answer) it?.reject(new Error(answer.error))
    else it?.resolve(answer.bytes)
  })

  function wait(id: number): Promise<Uint8Array> {
    if (ended) return Promise.reject(ended)
    worker.ref()
    return new Promise((resolve, reject) => waiting.set(id, { resolve, reject }))
  }
  function ask(order: { kind: 'wire'; bytes: Uint8Array } | { kind: 'copy' | 'close' }): Promise<Uint8Array> {
    const id = ++count
    const answer = wait(id)
    if (!ended) worker.postMessage({ id, ...order })
    return answer
  }

  let held: Uint8Array[] = []
  async function execProtocolStream(message: Uint8Array): Promise<unknown[]> {
    held.push(message)
    if (!asking.has(message[0] ?? 0)) return []
    // One trip to the thread for a whole statement instead of one for each of its five messages.
    const bytes = Buffer.concat(held)
    held = []
    const messages: unknown[] = []
    new protocol.Parser().parse(await ask({ kind: 'wire', bytes }), (it) => messages.push(it))
    return messages
  }

  try {
    await wait(0)
  } catch (error) {
    closing = true
    worker.ref()
    await gone
    throw error
  }
  return {
    // The pool's configuration knows a database by these two alone.
    database: { waitReady: Promise.resolve(), execProtocolStream } as unknown as PGlite,
    copy: () => ask({ kind: 'copy' }),
    async close() {
      if (closing) return gone
      closing = true
      await ask({ kind: 'close' })
      worker.ref()
      await gone
    },
  }
}

function startWorker(workerData: WorkerStart): Worker {
  const compiled = import.meta.url.endsWith('.js')
  const file = compiled ? './pglite-worker.js' : './pglite-worker-from-source.mjs'
  // Flags of the main program, such as one that evaluates a text, are none of the worker's.
  return new Worker(new URL(file, import.meta.url), { workerData, execArgv: [] })
}
