import type { createApp } from '#api/app.ts'

type App = Pick<ReturnType<typeof createApp>, 'request'>

/** Sends JSON to the application without a network, and gives what came back. */
export async function asked<Reply = Record<string, unknown>>(
  app: App,
  address: string,
  { method, body }: { readonly method?: string; readonly body?: unknown } = {},
): Promise<{ status: number; body: Reply }> {
  const response = await app.request(address, {
    method: method ?? (body === undefined ? 'GET' : 'POST'),
    ...(body === undefined
      ? {}
      : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }),
  })
  const text = await response.text()
  return { status: response.status, body: (text === '' ? undefined : JSON.parse(text)) as Reply }
}
