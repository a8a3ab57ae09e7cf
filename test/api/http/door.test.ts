import pg from 'pg'
import { expect, test } from 'vitest'
import { createApp } from '#api/app.ts'
import { ownOrigins } from '#api/http/own-origins.ts'
import { kyselyOver } from '#db/kysely-over.ts'

// Nothing of this asks the database: what is refused never comes so far, and what is let through is reckoned alone.
const app = createApp({
  db: kyselyOver(new pg.Pool({ host: '127.0.0.1', port: 1 })),
  origins: ownOrigins({
    host: '127.0.0.1',
    port: 4100,
    publicUrl: 'https://dyes.example.org',
    allowedHosts: ['studio.local', 'kitchen.local:8080'],
  }),
})
const nobody = '11111111-1111-4111-8111-111111111111'
const reckon = '/api/calculations/distribution'
const question = JSON.stringify({ kind: 't', df: 7, at: 1 })

type Headers = Record<string, string>
async function asked(path: string, method = 'GET', headers: Headers = {}, body?: string | Blob) {
  const answer = await app.request(`http://localhost:4100${path}`, {
    method,
    headers,
    ...(body === undefined ? {} : { body }),
  })
  const text = await answer.text()
  return { status: answer.status, text, type: answer.headers.get('content-type'), headers: answer.headers }
}
const problemOf = ({ status, text }: { status: number; text: string }): string =>
  status < 400 ? 'none' : String(JSON.parse(text).type)
const json = { 'content-type': 'application/json' }

test.each([
  'localhost:4100',
  'LOCALHOST:4100',
  '127.0.0.1:4100',
  '127.8.9.10:4100',
  '[::1]:4100',
  'dyes.example.org',
  'studio.local',
  'studio.local:4100',
  'kitchen.local:8080',
])('it answers to %s', async (host) => {
  expect((await asked('/api/openapi.json', 'GET', { host })).status).toBe(200)
})

test.each([
  'evil.example:4100',
  'evil.example',
  'localhost',
  'localhost:4101',
  '127.0.0.1.evil.example:4100',
  'localhost.evil.example:4100',
  '127.evil.example:4100',
  'evil@localhost:4100',
  'localhost:4100/evil.example',
  'dyes.example.org:4101',
  'kitchen.local',
  '0.0.0.0:4100',
  '192.168.1.7:4100',
  '',
])('it does not answer to “%s”, whatever is asked, and says nothing of what it holds', async (host) => {
  for (const path of [
    '/',
    '/api/openapi.json',
    '/api/trials',
    '/sheets/sheet.css',
    '/assets/a.js',
    '/nothing',
  ]) {
    const answer = await asked(path, 'GET', { host })
    expect([path, answer.status, answer.type]).toEqual([path, 421, 'application/problem+json'])
    expect(problemOf(answer)).toBe('/problems/wrong-host')
    expect(answer.headers.get('access-control-allow-origin')).toBeNull()
  }
  expect((await asked(reckon, 'POST', { ...json, host }, question)).status).toBe(421)
})

test.each([
  [{}],
  [{ origin: 'http://localhost:4100', 'sec-fetch-site': 'same-origin' }],
  [{ origin: 'http://127.0.0.1:4100' }],
  [{ origin: 'https://dyes.example.org' }],
  [{ origin: 'https://studio.local' }],
  [{ 'sec-fetch-site': 'none' }],
])('a write with %j is let through', async (headers) => {
  expect(problemOf(await asked(reckon, 'POST', { ...json, ...headers }, question))).toBe('none')
})

test.each([
  [{ origin: 'http://evil.example' }],
  [{ origin: 'http://localhost:5000' }],
  [{ origin: 'https://localhost:4100' }],
  [{ origin: 'http://dyes.example.org' }],
  [{ origin: 'http://localhost:4100.evil.example' }],
  [{ origin: 'null' }],
  [{ origin: '' }],
  [{ origin: 'file://' }],
  [{ 'sec-fetch-site': 'cross-site' }],
  [{ 'sec-fetch-site': 'same-site' }],
  [{ 'sec-fetch-site': 'something-new' }],
  [{ origin: 'http://localhost:4100', 'sec-fetch-site': 'cross-site' }],
])('no write with %j is let through, whatever its method', async (headers) => {
  const lock = `/api/trials/${nobody}/rules/1/lock`
  for (const method of ['POST', 'PUT', 'PATCH', 'DELETE', 'PROPFIND']) {
    const answer = await asked(lock, method, headers)
    expect([method, answer.status, problemOf(answer)]).toEqual([method, 403, '/problems/other-origin'])
  }
  expect((await asked(reckon, 'POST', { ...json, ...headers }, question)).status).toBe(403)
})

test.each([
  'text/plain',
  'text/plain;charset=UTF-8',
  'multipart/form-data; boundary=a',
  'Application/X-WWW-Form-Urlencoded',
  'application/octet-stream',
  '',
])('what a form can send, or nobody takes, is not taken: “%s”', async (type) => {
  for (const path of [reckon, `/api/trials/${nobody}/table`, `/api/trials/${nobody}/instrument-file`]) {
    const answer = await asked(path, 'POST', { 'content-type': type }, question)
    expect([path, answer.status, problemOf(answer)]).toEqual([path, 415, '/problems/wrong-media-type'])
  }
})

test('an empty body of the type of a form is not taken either, nor a body without a type', async () => {
  const lock = `/api/trials/${nobody}/rules/1/lock`
  expect((await asked(lock, 'POST', { 'content-type': 'application/x-www-form-urlencoded' })).status).toBe(
    415,
  )
  expect((await asked(reckon, 'POST', { 'content-length': '3' }, new Blob(['{} ']))).status).toBe(415)
})

test('a page of another address may neither load an answer nor frame it', async () => {
  const { headers } = await asked('/api/openapi.json')
  expect(headers.get('cross-origin-resource-policy')).toBe('same-origin')
  expect(headers.get('x-frame-options')).toBe('DENY')
  expect([...headers.keys()].filter((name) => name.startsWith('access-control'))).toEqual([])
})
