/** Where the tool listens, and under which other names it is reached. */
export type Reached = {
  readonly host: string
  readonly port: number
  readonly publicUrl?: string | undefined
  /** `host` or `host:port`. */
  readonly allowedHosts?: readonly string[] | undefined
}

/**
 * The origins that are the tool’s own. A name that merely leads to this machine is not among them: a stranger’s page
 * may point its own name here (DNS rebinding) and would then read everything.
 *
 * @example
 * [...ownOrigins({ host: '127.0.0.1', port: 4100 })] // ['http://localhost:4100', 'http://127.0.0.1:4100', 'http://[::1]:4100']
 * @example
 * ownOrigins({ host: '127.0.0.1', port: 4100, publicUrl: 'https://dyes.example.org/x' }).has('https://dyes.example.org') // true
 */
export function ownOrigins({ host, port, publicUrl, allowedHosts = [] }: Reached): ReadonlySet<string> {
  const names = ['localhost', '127.0.0.1', '[::1]']
  if (!everywhere.has(host)) names.push(host.includes(':') ? `[${host}]` : host)
  const origins = names.map((name) => `http://${name}:${port}`)
  if (publicUrl !== undefined) origins.push(publicUrl)
  for (const allowed of allowedHosts) {
    const withPort = /:\d+$/.test(allowed) ? [allowed] : [allowed, `${allowed}:${port}`]
    origins.push(...withPort.flatMap((it) => [`http://${it}`, `https://${it}`]))
  }
  return new Set(origins.flatMap((origin) => originOf(origin) ?? []))
}

/** Addresses that mean “all of this machine’s”: to listen at, not to be reached under. */
const everywhere = new Set(['0.0.0.0', '::'])

/** Without what belongs to a path, a user or a wild card: as `Host` and `Origin` are written. */
const plainAuthority = /^[^\s/?#@\\*]+$/

/** An origin in its one form, its usual port left out; every address of the loopback net counts as 127.0.0.1. */
function originOf(text: string): string | undefined {
  if (!URL.canParse(text)) return undefined
  const { protocol, hostname, port } = new URL(text)
  if (protocol !== 'http:' && protocol !== 'https:') return undefined
  const name = isLoopback(hostname) && hostname.startsWith('127.') ? '127.0.0.1' : hostname
  return `${protocol}//${name}${port === '' ? '' : `:${port}`}`
}

/**
 * Whether a `Host` header names the tool. Behind a server that holds the certificate its scheme is not known here.
 *
 * @example
 * const own = ownOrigins({ host: '127.0.0.1', port: 4100 })
 * [isOwnHost(own, 'localhost:4100'), isOwnHost(own, 'evil.example:4100'), isOwnHost(own, 'localhost')] // [true, false, false]
 */
export function isOwnHost(own: ReadonlySet<string>, host: string): boolean {
  return (
    plainAuthority.test(host) && ['http', 'https'].some((scheme) => hasOrigin(own, `${scheme}://${host}`))
  )
}

/**
 * Whether an `Origin` header is one of the tool’s own pages; `null` never is.
 *
 * @example
 * const own = ownOrigins({ host: '127.0.0.1', port: 4100 })
 * [isOwnOrigin(own, 'http://127.0.0.1:4100'), isOwnOrigin(own, 'http://127.0.0.1:8080'), isOwnOrigin(own, 'null')] // [true, false, false]
 */
export function isOwnOrigin(own: ReadonlySet<string>, origin: string): boolean {
  return plainAuthority.test(origin.replace(/^https?:\/\//, '')) && hasOrigin(own, origin)
}

function hasOrigin(own: ReadonlySet<string>, text: string): boolean {
  const origin = originOf(text)
  return origin !== undefined && own.has(origin)
}

/**
 * Whether an address to listen at lets nobody in from outside this machine.
 *
 * @example
 * ['127.0.0.1', '::1', 'localhost', '0.0.0.0', '127.example.org'].map(isLoopback) // [true, true, true, false, false]
 */
export function isLoopback(host: string): boolean {
  return host === 'localhost' || host === '::1' || /^127(?:\.\d{1,3}){3}$/.test(host)
}
