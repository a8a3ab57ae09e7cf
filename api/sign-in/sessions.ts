import { createHash, randomBytes } from 'node:crypto'

/** Those who are signed in. A restart of the tool signs everybody out. */
export type Sessions = {
  /** A token of 256 bits for the cookie; it is kept here as its hash alone. */
  begin(): string
  holds(token: string | undefined): boolean
  end(token: string | undefined): void
}

/** So long one is signed in, in seconds: a week. */
export const sessionSeconds = 7 * 24 * 3600

const mostSessions = 1000

/**
 * @example
 * const sessions = openSessions()
 * const token = sessions.begin()
 * sessions.end(sessions.begin())
 * [token.length, sessions.holds(token), sessions.holds('guessed')] // [43, true, false]
 */
export function openSessions(now: () => number = Date.now): Sessions {
  const ends = new Map<string, number>()
  return {
    begin() {
      const token = randomBytes(32).toString('base64url')
      for (const [hash, at] of ends) if (at <= now() || ends.size >= mostSessions) ends.delete(hash)
      ends.set(hashOf(token), now() + sessionSeconds * 1000)
      return token
    },
    holds: (token) => token !== undefined && (ends.get(hashOf(token)) ?? 0) > now(),
    end(token) {
      if (token !== undefined) ends.delete(hashOf(token))
    },
  }
}

const hashOf = (token: string): string => createHash('sha256').update(token).digest('base64url')
