/** What a route handler needs of its context, where schemas are known by name only. */
export type Asked = {
  readonly req: { valid: (what: 'json' | 'query' | 'param' | 'header') => unknown }
  header: (name: string, value: string) => void
  json: (body: unknown, status: number) => Response
  body: (body: null, status: number) => Response
}

export function idOf(c: Asked): string {
  return (c.req.valid('param') as { id: string }).id
}
