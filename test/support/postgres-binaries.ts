import { type ChildProcess, type SpawnOptions, spawn, spawnSync } from 'node:child_process'
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'

export type Cluster = {
  readonly url: string
  /** Ends the server and lets its folder stand, for `startAgain`: 'fast' as an administrator would, 'immediate' as a crash. */
  shutDown(how: 'fast' | 'immediate'): Promise<void>
  /** Starts it again on the same port, over the same folder. */
  startAgain(): Promise<void>
  stop(): Promise<void>
}

/** The folder of an installed server's programs: on the PATH, or where packages put them, the newest first. */
export function postgresBinaries(): string | undefined {
  const folders = (process.env.PATH ?? '').split(delimiter)
  for (const base of ['/usr/lib/postgresql', '/opt/homebrew/opt', '/usr/local/opt']) {
    const versions = existsSync(base)
      ? readdirSync(base).filter((name) => /^(postgresql@)?\d+$/.test(name))
      : []
    const newestFirst = versions.sort((a, b) => numberIn(b) - numberIn(a))
    folders.push(...newestFirst.map((name) => join(base, name, 'bin')))
  }
  return folders.find((folder) => ['initdb', 'postgres'].every((name) => existsSync(join(folder, name))))
}

const numberIn = (name: string): number => Number(name.replace(/\D/g, ''))

/**
 * A server of its own in a temporary folder, on a free port of this machine; gone with the process.
 *
 * @param settings.keepsCommits An acknowledged commit survives a crash of the server, as it does where people use it.
 */
export async function startCluster(
  binaries: string,
  { keepsCommits = false }: { keepsCommits?: boolean } = {},
): Promise<Cluster> {
  const user = unprivilegedUser()
  const folder = mkdtempSync(join(tmpdir(), 'runs-clear-postgres-'))
  if (user) chownSync(folder, user.uid, user.gid)
  const options = { ...user, cwd: folder, env: { ...process.env, LC_ALL: 'C.UTF-8', TZ: 'UTC' } }
  const remove = () => rmSync(folder, { recursive: true, force: true })

  const data = join(folder, 'data')
  const initdbOptions = ['-U', 'postgres', '-A', 'trust', '-E', 'UTF8', '--no-sync', '--no-instructions']
  const made = spawnSync(join(binaries, 'initdb'), ['-D', data, ...initdbOptions], {
    ...options,
    encoding: 'utf8',
  })
  if (made.status !== 0) {
    remove()
    throw new Error(`initdb: ${made.stderr || made.error?.message}`)
  }
  const port = await freePort()
  // It holds nothing but test records: it need not wait for the disk.
  const quick = ['fsync=off', 'full_page_writes=off', 'max_connections=100']
  if (!keepsCommits) quick.push('synchronous_commit=off')
  const settings = ['listen_addresses=127.0.0.1', ...quick].flatMap((it) => ['-c', it])
  const start = () =>
    startPostgres(
      join(binaries, 'postgres'),
      ['-D', data, '-p', String(port), '-k', folder, ...settings],
      options,
    )

  let server = await start()
  const kill = () => {
    server.process.kill('SIGKILL')
    remove()
  }
  process.once('exit', kill)
  return {
    url: `postgres://postgres@127.0.0.1:${port}/postgres`,
    async shutDown(how) {
      server.process.kill(how === 'fast' ? 'SIGINT' : 'SIGQUIT')
      await server.gone
    },
    async startAgain() {
      server = await start()
    },
    async stop() {
      process.removeListener('exit', kill)
      server.process.kill('SIGINT')
      await server.gone
      remove()
    },
  }
}

type RunningPostgres = { readonly process: ChildProcess; readonly gone: Promise<void> }

async function startPostgres(
  program: string,
  flags: readonly string[],
  options: SpawnOptions,
): Promise<RunningPostgres> {
  const server = spawn(program, flags, { ...options, stdio: ['ignore', 'ignore', 'pipe'] })
  const gone = new Promise<void>((resolve) => server.once('exit', () => resolve()))
  let log = ''
  await new Promise<void>((resolve, reject) => {
    server.stderr?.on('data', (bytes) => {
      log = (log + bytes).slice(-2000)
      if (log.includes('ready to accept connections')) resolve()
    })
    server.once('error', reject)
    server.once('exit', () => reject(new Error(`the server ended: ${log}`)))
  })
  return { process: server, gone }
}

/** A port that nobody listens on just now. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer().once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => resolve(typeof address === 'object' && address ? address.port : 0))
    })
  })
}

// PostgreSQL refuses to run as root: another user is taken for the process, which needs no su.
function unprivilegedUser(): { uid: number; gid: number } | undefined {
  if (process.getuid?.() !== 0) return undefined
  const users = readFileSync('/etc/passwd', 'utf8').split('\n')
  const user = ['postgres', 'nobody'].flatMap(
    (name) => users.find((line) => line.startsWith(`${name}:`)) ?? [],
  )[0]
  const [, , uid, gid] = user?.split(':') ?? []
  return uid && gid ? { uid: Number(uid), gid: Number(gid) } : undefined
}
