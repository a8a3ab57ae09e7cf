import { getConnInfo } from '@hono/node-server/conninfo'
import { createRoute } from '@hono/zod-openapi'
import type { Context, MiddlewareHandler } from 'hono'
import { Problem } from '#api/contract/problem.ts'
import { SignIn } from '#api/contract/sign-in.ts'
import { answersProblem } from '#api/http/problem.ts'
import { json, newRoutes } from '#api/http/routes.ts'
import type { SigningIn } from './open-sign-in.ts'
import { sessionCookie } from './session-cookie.ts'

const tags = ['sign-in']

const signedIn = createRoute({
  method: 'post',
  path: '/sign-in',
  tags,
  summary: 'Sign in with the access phrase; the answer sets the cookie',
  request: { body: json(SignIn) },
  responses: {
    204: { description: 'Signed in, for a week' },
    ...answersProblem('malformed-json', 'wrong-phrase', 'not-found', 'at-fault', 'too-many-tries'),
  },
})
const signedOut = createRoute({
  method: 'post',
  path: '/sign-out',
  tags,
  summary: 'Sign out in this browser',
  responses: { 204: { description: 'Signed out' } },
})

/** `/api/sign-in` and `/api/sign-out`. */
export function signInRoutes(signingIn: SigningIn | undefined) {
  return newRoutes()
    .openapi(signedIn, async (c) => {
      if (signingIn === undefined)
        throw new Problem('not-found', 'There is no sign-in here: everybody on this machine is in.')
      const { isPhrase, sessions, tries, secure } = signingIn
      const address = getConnInfo(c).remote.address ?? ''
      const wait = tries.begin(address)
      if (wait > 0) {
        c.header('retry-after', String(wait))
        throw new Problem('too-many-tries', `Too many wrong tries. Wait ${inWords(wait)}, then try again.`)
      }
      if (!(await isPhrase(c.req.valid('json').phrase)))
        throw new Problem('wrong-phrase', 'This is not the access phrase.', [
          { pointer: '#/phrase', detail: 'This is not the access phrase. Capitals count.' },
        ])
      tries.right(address)
      sessionCookie(c, secure).set(sessions.begin())
      return c.body(null, 204)
    })
    .openapi(signedOut, (c) => {
      if (signingIn !== undefined) {
        const cookie = sessionCookie(c, signingIn.secure)
        signingIn.sessions.end(cookie.token())
        cookie.remove()
      }
      return c.body(null, 204)
    })
}

const inWords = (seconds: number): string =>
  seconds < 120 ? `${seconds} ${seconds === 1 ? 'second' : 'seconds'}` : `${Math.ceil(seconds / 60)} minutes`

/** Everything below `/api` and `/sheets` asks for the cookie; the files of the pages hold no records. */
export function needsSignIn({ sessions, secure }: SigningIn): MiddlewareHandler {
  return (c, next) => {
    if (isOpen(c)) return next()
    // A browser that is shared keeps nothing for the next one.
    c.header('cache-control', 'no-store')
    if (sessions.holds(sessionCookie(c, secure).token())) return next()
    // A sheet is opened by hand: to the page for signing in, and back.
    if (c.req.path.startsWith('/sheets/') && c.req.header('accept')?.includes('text/html'))
      return Promise.resolve(c.redirect(`/sign-in?then=${encodeURIComponent(c.req.path)}`, 303))
    throw new Problem('sign-in-needed', 'Sign in with the access phrase first.')
  }
}

function isOpen({ req: { method, path } }: Context): boolean {
  if (path === '/api/sign-in' || path === '/api/sign-out') return method === 'POST'
  if (path === '/api/health') return method === 'GET' || method === 'HEAD'
  return !/^\/(?:api|sheets)(?:\/|$)/.test(path)
}
