import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import builtOnce from '#test/support/built-once.ts'
import { realPostgres } from '#test/support/real-postgres.ts'
import { startServer, type Where } from '#test/support/running-server.ts'
import { lostAndTorn } from './lost-and-torn.ts'
import { type Parcel, writeParcels } from './parcel-writer.ts'

/**
 * Does an acknowledged record survive? The tool is killed (SIGKILL) in the middle of writes again and again, on the
 * embedded database and on a server; after each kill every record that it had acknowledged is looked for, and what
 * was sent in one request must be there whole or not at all. `npm run endure -- 20` (rounds on each; 20 unless said).
 */
const rounds = Number(process.argv[2] ?? 20)
const writers = 4

async function endure(name: string, where: Where): Promise<boolean> {
  const parcels: Parcel[] = []
  let worst = { lost: 0, torn: 0 }
  for (let round = 1; round <= rounds; round++) {
    const server = await startServer(where)
    const before = parcels.length
    const writing = Promise.all(Array.from({ length: writers }, () => writeParcels(server.url, parcels)))
    // The kill comes at another moment each time: in the first writes, in the middle, after many.
    await new Promise((resolve) => setTimeout(resolve, 300 + Math.random() * 3700))
    await server.kill()
    await writing
    const { lost, torn, kept } = await lostAndTorn(where, parcels)
    worst = { lost: Math.max(worst.lost, lost), torn: Math.max(worst.torn, torn) }
    const acknowledged = parcels.slice(before).filter((it) => it.acknowledged).length
    console.log(
      `${name}, kill ${round}: ${acknowledged} requests acknowledged, ${kept} records kept, ${lost} lost, ${torn} torn`,
    )
  }
  const all = parcels.filter((it) => it.acknowledged)
  const records = all.reduce((sum, { ids }) => sum + ids.length, 0)
  console.log(
    `${name}: ${rounds} kills, ${all.length} requests with ${records} records acknowledged, ${worst.lost} lost, ${worst.torn} torn`,
  )
  return records > 0 && worst.lost === 0 && worst.torn === 0
}

await builtOnce()
const folder = mkdtempSync(join(tmpdir(), 'runs-clear-endure-'))
const postgres = await realPostgres()
try {
  const whole = [
    await endure('embedded', { dataDir: folder }),
    await endure('server', { databaseUrl: postgres.url }),
  ]
  process.exitCode = whole.every(Boolean) ? 0 : 1
} finally {
  await postgres.stop()
  rmSync(folder, { recursive: true, force: true })
}
