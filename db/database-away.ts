/**
 * SQLSTATEs of a server that cannot be worked with just now: connection exceptions (class 08), a connection ended or
 * refused by it (57P), no room for another (53300), and a connection that it no longer lets in (class 28, 3D000).
 * PostgreSQL documentation, appendix A.
 */
const states = /^(?:08...|57P0[1-5]|53300|28...|3D000|25P0[34])$/

/** What the system says of a connection that is not made, or breaks. */
const systemCodes = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ECONNABORTED',
  'EPIPE',
  'ETIMEDOUT',
  'EHOSTUNREACH',
  'EHOSTDOWN',
  'ENETUNREACH',
  'ENETDOWN',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ERR_STREAM_DESTROYED',
  'ERR_STREAM_WRITE_AFTER_END',
])

/** The words of pg and of Kysely, which give no code, for a connection that is gone. */
const words =
  /^(?:Connection terminated|timeout expired$|Client (?:was closed|has encountered a connection error) and is not queryable|Postgres connection has been discarded)/

/**
 * Is this the error of a database that cannot be reached just now: refused, cut off, ended, starting up, too slow to
 * let us in? Then nothing is wrong with what was asked, and the same may be asked again.
 *
 * @example
 * isDatabaseAway(Object.assign(new Error('connect'), { code: 'ECONNREFUSED' })) // true
 */
export function isDatabaseAway(error: unknown): boolean {
  if (!(error instanceof Error)) return false
  const { code, syscall } = error as NodeJS.ErrnoException
  // The socket of a server on this machine is a file that goes with it.
  if (code === 'ENOENT') return syscall === 'connect'
  if (typeof code === 'string') return states.test(code) || systemCodes.has(code)
  return words.test(error.message)
}
