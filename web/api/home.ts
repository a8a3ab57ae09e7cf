import type { Home } from '#api/contract/home.ts'
import { ask } from '#web/api/client.ts'

export const homeNow = (signal?: AbortSignal): Promise<Home> =>
  ask<Home>('/api/home', signal ? { signal } : {})
