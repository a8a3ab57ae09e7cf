import { parentPort, workerData } from 'node:worker_threads'
import { PGlite } from '@electric-sql/pglite'
import { DurableFiles, durableStart } from './pglite-durable-files.ts'
import type { Answer, Order, WorkerStart } from './pglite-thread.ts'

/**
 * The embedded database itself, in a thread of its own: its calls are synchronous, and a long query would
 * otherwise stop every other request. Takes PostgreSQL's wire messages, gives the wire's answers.
 */
const port = parentPort
if (!port) throw new Error('pglite-worker.ts runs as a worker thread only')
const { folder, copy } = workerData as WorkerStart

function answer(it: Answer): void {
  port?.postMessage(it, 'bytes' in it ? [it.bytes.buffer as ArrayBuffer] : [])
}

// PGlite's errors carry 25 KB of its minified source in the stack: only the sentence travels.
function sentenceOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}

async function open(): Promise<PGlite> {
  return PGlite.create({
    fs: new DurableFiles(folder),
    startParams: durableStart,
    ...(copy ? { loadDataDir: new Blob([copy as Uint8Array<ArrayBuffer>]) } : {}),
  })
}

async function carryOut(database: PGlite, order: Order): Promise<Uint8Array> {
  if (order.kind === 'wire') return (await database.execProtocolRaw(order.bytes)).slice()
  if (order.kind === 'copy') return new Uint8Array(await (await database.dumpDataDir('gzip')).arrayBuffer())
  await database.close()
  return new Uint8Array()
}

try {
  const database = await open()
  let turn: Promise<void> = Promise.resolve()
  port.on('message', (order: Order) => {
    // One at a time, in the order of asking: there is one session.
    turn = turn.then(async () => {
      try {
        answer({ id: order.id, bytes: await carryOut(database, order) })
      } catch (error) {
        answer({ id: order.id, error: sentenceOf(error) })
      }
      if (order.kind === 'close') port.close()
    })
  })
  answer({ id: 0, bytes: new Uint8Array() })
} catch (error) {
  answer({ id: 0, error: sentenceOf(error) })
  port.close()
}
