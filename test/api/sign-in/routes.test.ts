import { expect, test } from 'vitest'
import { openSignIn, type SigningIn } from '#api/sign-in/open-sign-in.ts'
import { countWrongTries } from '#api/sign-in/wrong-tries.ts'
import { listeningApp } from '#test/support/listening-app.ts'

const phrase = 'four blue skeins'

async function tool({ publicUrl, ...more }: Partial<SigningIn> & { publicUrl?: string } = {}) {
  const url = await listeningApp({ ...(await openSignIn(phrase, publicUrl)), ...more })
  const ask = (path: string, method = 'GET', cookie = '', body?: unknown) =>
    fetch(url + path, {
      method,
      redirect: 'manual',
      headers: {
        ...(cookie === '' ? {} : { cookie }),
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    })
  const signIn = (typed: string) => ask('/api/sign-in', 'POST', '', { phrase: typed })
  return { url, ask, signIn }
}

const typeOf = async (answer: Response): Promise<string> =>
  ((await answer.json()) as { type: string }).type.replace('/problems/', '')
const cookieOf = (answer: Response): string => answer.headers.get('set-cookie')?.split(';', 1)[0] ?? ''

test('without the cookie every address is refused but signing in; with it one is let through', async () => {
  const { ask, signIn } = await tool()
  const cookie = cookieOf(await signIn(phrase))
  const document = (await (await ask('/api/openapi.json', 'GET', cookie)).json()) as {
    paths: Record<string, object>
  }
  const addresses = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
  )
  expect(addresses.length).toBeGreaterThan(80)
  const open = new Set(['POST /api/sign-in', 'POST /api/sign-out', 'GET /api/health'])
  const closed = [
    ...addresses.filter((address) => !open.has(address)),
    ...['GET /api/openapi.json', 'GET /api', 'GET /api/nothing', 'GET /sheets/sheet.css', 'GET /sheets/{id}'],
    ...['POST /api/health', 'GET /api/sign-in', 'DELETE /api/trials'],
  ]
  for (const address of closed) {
    const [method = '', path = ''] = address.split(' ')
    const without = await ask(path.replace(/\{\w+\}/g, '1'), method)
    expect([address, without.status, await typeOf(without)]).toEqual([address, 401, 'sign-in-needed'])
    const guessed = await ask(path.replace(/\{\w+\}/g, '1'), method, 'runs-clear=guessed')
    expect([address, guessed.status]).toEqual([address, 401])
    await guessed.text()
  }
  for (const path of ['/api/openapi.json', '/sheets/sheet.css'])
    expect((await ask(path, 'GET', cookie)).status).toBe(200)
})

test('the cookie is out of reach of scripts and of other pages, and ends with signing out', async () => {
  const { ask, signIn } = await tool()
  const answer = await signIn(`  ${phrase} `)
  expect(answer.status).toBe(204)
  const set = answer.headers.get('set-cookie') ?? ''
  expect(set).toMatch(/^runs-clear=[\w-]{43}; Max-Age=604800; Path=\/; HttpOnly; SameSite=Strict$/)
  const cookie = cookieOf(answer)
  expect(cookieOf(await signIn(phrase))).not.toBe(cookie)
  const within = await ask('/api/openapi.json', 'GET', cookie)
  expect([within.status, within.headers.get('cache-control')]).toEqual([200, 'no-store'])
  expect((await ask('/api/sign-out', 'POST', cookie)).headers.get('set-cookie')).toMatch(
    /^runs-clear=; Max-Age=0/,
  )
  expect((await ask('/api/openapi.json', 'GET', cookie)).status).toBe(401)
})

test('where the public address is https, the cookie goes over https alone', async () => {
  const { signIn } = await tool({ publicUrl: 'https://dyes.example.org' })
  expect((await signIn(phrase)).headers.get('set-cookie')).toMatch(
    /^__Host-runs-clear=.*; Secure; SameSite=Strict$/,
  )
})

test('a wrong phrase is refused by name, and what is no phrase too', async () => {
  const { ask, signIn } = await tool()
  const wrong = await signIn('five blue skeins')
  expect([wrong.status, wrong.headers.get('set-cookie')]).toEqual([403, null])
  expect(await wrong.json()).toMatchObject({
    type: '/problems/wrong-phrase',
    errors: [{ pointer: '#/phrase' }],
  })
  expect((await ask('/api/sign-in', 'POST', '', {})).status).toBe(422)
  expect((await ask('/api/sign-in', 'POST')).status).toBe(422)
})

test('after four wrong tries in a row, at once or one by one, one waits; the right phrase waits as well', async () => {
  let seconds = 0
  const { signIn } = await tool({ tries: countWrongTries(() => seconds * 1000) })
  const first = await Promise.all(Array.from({ length: 8 }, () => signIn('wrong')))
  expect(first.map(({ status }) => status).sort()).toEqual([403, 403, 403, 403, 429, 429, 429, 429])
  const waiting = await signIn(phrase)
  expect([waiting.status, waiting.headers.get('retry-after'), await typeOf(waiting)]).toEqual([
    429,
    '1',
    'too-many-tries',
  ])
  seconds = 1
  expect((await signIn('wrong')).status).toBe(403)
  expect((await signIn(phrase)).headers.get('retry-after')).toBe('2')
  seconds = 3
  expect((await signIn(phrase)).status).toBe(204)
  expect((await signIn('wrong')).status).toBe(403)
})

test('a sheet that is opened by hand leads to the page for signing in and back', async () => {
  const { url } = await tool()
  const answer = await fetch(`${url}/sheets/abc`, { redirect: 'manual', headers: { accept: 'text/html' } })
  expect([answer.status, answer.headers.get('location')]).toEqual([303, '/sign-in?then=%2Fsheets%2Fabc'])
})
