import { type ChildProcess, spawn } from 'node:child_process'
import { join } from 'node:path'
import { builtTool } from './built-tool.ts'

const main = join(builtTool, 'api/main.js')

export type Where = { readonly dataDir: string } | { readonly databaseUrl: string }
type Options = {
  readonly environment?: Readonly<Record<string, string>>
  /** What stands after the program's name: `--demo`. */
  readonly flags?: readonly string[]
  /** As another user of the system, where root runs the test. */
  readonly user?: { readonly uid: number; readonly gid: number }
}
export type Ended = { readonly code: number | null; readonly signal: string | null; readonly stderr: string }
export type RunningServer = {
  readonly url: string
  readonly pid: number
  /** Asks it to end, as Ctrl+C does. */
  stop(): Promise<Ended>
  /** Ends it with no chance to tidy up, as a power cut would. */
  kill(): Promise<Ended>
}

/** The built tool as a process of its own, on a free port. Needs `built-once.ts`. */
export async function startServer(where: Where, options: Options = {}): Promise<RunningServer> {
  const { child, ended, stdout } = run(where, options)
  const url = await Promise.race([
    untilAddress(child, stdout),
    ended.then(({ code, stderr }) => {
      throw new Error(`The tool ended with ${code}: ${stderr}`)
    }),
  ])
  const end = (signal: NodeJS.Signals) => () => {
    child.kill(signal)
    return ended
  }
  return { url, pid: child.pid ?? 0, stop: end('SIGTERM'), kill: end('SIGKILL') }
}

/** For a start that is to be refused, or killed at a moment of the test's choice: waits for the end. */
export function endOfStart(
  where: Where,
  { killedWhen, ...options }: Options & { readonly killedWhen?: () => boolean } = {},
): Promise<Ended> {
  const { child, ended, stdout } = run(where, options)
  if (!killedWhen) {
    // One that starts all the same is not waited for.
    void untilAddress(child, stdout).then(() => child.kill('SIGTERM'))
    return ended
  }
  const look = setInterval(() => killedWhen() && child.kill('SIGKILL'), 2)
  return ended.finally(() => clearInterval(look))
}

function run(where: Where, { environment = {}, flags = [], user }: Options) {
  const place = 'dataDir' in where ? { DATA_DIR: where.dataDir } : { DATABASE_URL: where.databaseUrl }
  const { DATABASE_URL: _, ...inherited } = process.env
  const child = spawn(process.execPath, [main, ...flags], {
    env: { ...inherited, HOST: '127.0.0.1', PORT: '0', ...place, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
    ...user,
  })
  // A test run that ends early takes its servers along.
  const kill = () => child.kill('SIGKILL')
  process.once('exit', kill)
  const heard = { stdout: '', stderr: '' }
  child.stdout.on('data', (bytes) => {
    heard.stdout += bytes
  })
  child.stderr.on('data', (bytes) => {
    heard.stderr += bytes
  })
  const ended = new Promise<Ended>((resolve) => {
    child.once('close', (code, signal) => {
      process.removeListener('exit', kill)
      resolve({ code, signal, stderr: heard.stderr })
    })
  })
  return { child, ended, stdout: () => heard.stdout }
}

function untilAddress(child: ChildProcess, stdout: () => string): Promise<string> {
  return new Promise((resolve) => {
    child.stdout?.on('data', () => {
      const address = /http:\/\/\S+/.exec(stdout())?.[0]
      if (address) resolve(address)
    })
  })
}
