import type { Client } from './client.ts'

/** The running tool at an address, spoken to as a script would. */
export function clientAt(url: string): Client {
  const ask: Client['ask'] = async (method, path, body, headers = {}) => {
    const answer = await fetch(`${url}${path}`, {
      method,
      headers: { 'content-type': 'application/json', ...headers },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    })
    return { status: answer.status, body: await answer.json(), headers: answer.headers }
  }
  return { ask, get: (path) => ask('GET', path), post: (path, body) => ask('POST', path, body ?? {}) }
}
