import type { ClientBase } from 'pg'

/**
 * Makes a new connection ready. Which day a moment falls on is asked in SQL too: the same answer wherever the server
 * stands. Done by the pool, which lets a connection go that breaks meanwhile.
 */
export async function sessionInUtc(client: ClientBase): Promise<void> {
  await client.query(`set time zone 'UTC'`)
}
