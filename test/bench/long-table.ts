// One table of 100,000 rows through the API: how long its check and its keeping take, how far it says it is meanwhile,
// and whether others are answered in between. `npx tsx test/bench/long-table.ts [rows]`
import { randomUUID } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '#api/app.ts'
import { migrate } from '#db/migrate.ts'
import { openEmbedded } from '#db/pglite-open.ts'
import { asked } from '#test/support/asked.ts'

const rows = Number(process.argv[2] ?? 100_000)
const folder = mkdtempSync(join(tmpdir(), 'runs-clear-long-table-'))
const opened = await openEmbedded(folder)
await migrate(opened, { now: new Date() })
const app = createApp({ db: opened.db })
const seconds = (since: number) => `${((performance.now() - since) / 1000).toFixed(1)} s`

const line = (row: number) => {
  const steam = [0, 10, 20, 35, 50, 75][row % 6] ?? 0
  const shift = ((row * 7919) % 100) / 100
  return `${Math.floor(row / 600) + 1}\t${(row % 600) + 1}\t${steam}\t${(37 + shift).toFixed(1)}\t-14.0\t-13.2\t${(38.5 + shift).toFixed(1)}\t-12.8\t-11.3\t4\t3-4\t1`
}
const head = 'run\track_place\tsteam_min\tL0\ta0\tb0\tL1\ta1\tb1\trinses_to_4\tstain_white_wool\tfelt'
const text = [head, ...Array.from({ length: rows }, (_, row) => line(row))].join('\n')
console.log(`${rows} rows, ${(JSON.stringify(text).length / 1e6).toFixed(2)} MB as JSON`)

const trial = await asked<{ id: string }>(app, '/api/trials', {
  body: { title: 'Long', question: 'How long?' },
})
const table = `/api/trials/${trial.body.id}/table`
const body = { id: randomUUID(), text, between: { W2: 3 }, ownVessel: true }

const checking = performance.now()
const check = await asked(app, `${table}?check=true`, { body })
console.log(`checked in ${seconds(checking)}: ${check.status}, ${String(check.body.ready)} ready`)

let longest = 0
const keeping = performance.now()
let last = ''
const watch = setInterval(async () => {
  const since = performance.now()
  const { body: progress } = await asked(app, `${table}/${body.id}/progress`)
  longest = Math.max(longest, performance.now() - since)
  const words = `${String(progress.stage)} ${String(progress.done)} of ${String(progress.of)}`
  if (words !== last) console.log(`  after ${seconds(keeping)}: ${words}`)
  last = words
}, 250)
const kept = await asked(app, table, { body })
clearInterval(watch)
console.log(`kept in ${seconds(keeping)}: ${kept.status}, ${String(kept.body.kept)} rows`)
console.log(`the longest answer to how far it was took ${longest.toFixed(0)} ms`)

const writing = performance.now()
const csv = await app.request(table)
console.log(`written as CSV in ${seconds(writing)}: ${((await csv.text()).length / 1e6).toFixed(1)} MB`)
await opened.close()
rmSync(folder, { recursive: true, force: true })
