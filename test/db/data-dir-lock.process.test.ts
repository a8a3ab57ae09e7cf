import { type ChildProcess, spawn } from 'node:child_process'
import { readdirSync, symlinkSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'
import { builtTool } from '#test/support/built-tool.ts'
import { temporaryFolder } from '#test/support/temporary-folder.ts'

// The two kinds of lock, each in real processes of its own: the kernel's and the file's.
const kinds = [
  { kind: 'kernel lock', module: 'data-dir-lock.js', take: 'lockDataDir' },
  { kind: 'lock file', module: 'lock-file.js', take: 'lockByFile' },
] as const
type Kind = (typeof kinds)[number]

type Starter = { readonly process: ChildProcess; readonly held: boolean; readonly said: string }

/** A process that takes the lock and keeps it until it is killed, or says why it could not and ends. */
function starter(folder: string, { module, take }: Kind): Promise<Starter> {
  const file = pathToFileURL(join(builtTool, 'db', module)).href
  const program = `
    const { ${take} } = await import('${file}')
    try {
      const release = await ${take}(${JSON.stringify(folder)})
      console.log('held')
      process.on('SIGTERM', () => release().then(() => process.exit(0)))
      setInterval(() => {}, 1000)
    } catch (error) {
      console.log(error.name + ': ' + error.message)
    }`
  const child = spawn(process.execPath, ['--input-type=module', '-e', program])
  onTestFinished(() => {
    child.kill('SIGKILL')
  })
  return new Promise((resolve) => {
    let said = ''
    child.stdout.on('data', (bytes) => {
      said += bytes
      if (said.includes('\n')) resolve({ process: child, held: said.startsWith('held'), said: said.trim() })
    })
    child.stderr.on('data', (bytes) => {
      said += bytes
    })
    child.on('close', () => resolve({ process: child, held: false, said }))
  })
}

function ended(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => child.once('exit', () => resolve()))
}

test.each(kinds)('of eight that start at once one gets the folder: $kind', async (kind) => {
  const folder = temporaryFolder()
  const starters = await Promise.all(Array.from({ length: 8 }, () => starter(folder, kind)))
  const winners = starters.filter((it) => it.held)
  expect(winners).toHaveLength(1)
  for (const it of starters) {
    if (it.held) continue
    expect(it.said).toBe(
      `CannotStart: The data folder ${folder} is in use by process ${winners[0]?.process.pid}; end that one first, or choose another folder with DATA_DIR.`,
    )
  }
})

test.each(kinds)(
  'a holder that is killed leaves nothing that keeps the next one out: $kind',
  async (kind) => {
    const folder = temporaryFolder()
    for (const round of [1, 2, 3]) {
      const holder = await starter(folder, kind)
      expect(holder.held, `round ${round}: ${holder.said}`).toBe(true)
      holder.process.kill('SIGKILL')
      await ended(holder.process)
    }
    const after = await Promise.all(Array.from({ length: 8 }, () => starter(folder, kind)))
    expect(after.filter((it) => it.held)).toHaveLength(1)
  },
)

test.each(kinds)('a holder that ends by itself frees the folder: $kind', async (kind) => {
  const folder = temporaryFolder()
  const holder = await starter(folder, kind)
  holder.process.kill('SIGTERM')
  await ended(holder.process)
  expect((await starter(folder, kind)).held).toBe(true)
})

test('another path to the same folder finds the same lock', async () => {
  const folder = temporaryFolder()
  const other = join(temporaryFolder(), 'link')
  symlinkSync(folder, other)
  expect((await starter(folder, kinds[0])).held).toBe(true)
  expect((await starter(other, kinds[0])).held).toBe(false)
})

test('a lock file that names another process of the same number, begun at another time, does not count', async () => {
  const folder = temporaryFolder()
  writeFileSync(join(folder, '.lock-1'), JSON.stringify({ pid: String(process.pid), since: 'another time' }))
  expect((await starter(folder, kinds[1])).held).toBe(true)
  expect(readdirSync(folder)).toEqual(['.lock-2'])
})
