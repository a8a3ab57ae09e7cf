/**
 * A new random id (UUID, version 4). Chosen here and not by the server, so that sending the same thing twice is harmless.
 * `crypto.randomUUID` is missing where a page came over plain http from another machine.
 *
 * @example
 * newId().length // 36
 */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x40
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return [8, 12, 16, 20].reduce((text, at, i) => `${text.slice(0, at + i)}-${text.slice(at + i)}`, hex)
}
