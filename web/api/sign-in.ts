import { ask } from './client.ts'

/** Signs in with the access phrase; the browser keeps the cookie, and no script sees it. */
export const signIn = (phrase: string): Promise<void> => ask<void>('/api/sign-in', { body: { phrase } })

export const signOut = (): Promise<void> => ask<void>('/api/sign-out', { method: 'POST' })
