import type { Context } from 'hono'
import { deleteCookie, getCookie, setCookie } from 'hono/cookie'
import { sessionSeconds } from './sessions.ts'

const name = 'runs-clear'

/** The cookie of whoever is signed in: no script sees it, and it goes with requests of our own pages alone. */
export function sessionCookie(c: Context, secure: boolean) {
  const kept = { path: '/', httpOnly: true, sameSite: 'Strict', secure } as const
  // The browser holds a name with this prefix to https and to this very host.
  const prefixed = secure ? `__Host-${name}` : name
  return {
    token: (): string | undefined => getCookie(c, prefixed),
    set: (token: string): void => setCookie(c, prefixed, token, { ...kept, maxAge: sessionSeconds }),
    remove: (): void => void deleteCookie(c, prefixed, kept),
  }
}
