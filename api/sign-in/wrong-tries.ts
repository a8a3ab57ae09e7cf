/** Slows guessing down, each address for itself and all of them together. */
export type WrongTries = {
  /** Seconds to wait before this address may try; at 0 it may, and the try counts as wrong until it was right. */
  begin(address: string): number
  right(address: string): void
}

const free = 4
const longestWait = 15 * 60
const forgottenAfter = 60 * 60
/** All addresses together: so many at once, then one more in so many seconds. */
const together = { atOnce: 50, secondsForOne: 6 }
const mostAddresses = 10_000

/**
 * How long an address waits after so many wrong tries in a row, in seconds: 1 after the fourth, then twice as long each
 * time, at most a quarter of an hour.
 *
 * @example
 * [3, 4, 5, 9, 100].map(secondsAfter) // [0, 1, 2, 32, 900]
 */
export function secondsAfter(wrong: number): number {
  return wrong < free ? 0 : Math.min(longestWait, 2 ** (wrong - free))
}

export function countWrongTries(now: () => number = Date.now): WrongTries {
  const known = new Map<string, { wrong: number; until: number; last: number }>()
  let left = together.atOnce
  let filled = now()
  const fill = (): void => {
    left = Math.min(together.atOnce, left + (now() - filled) / 1000 / together.secondsForOne)
    filled = now()
  }
  return {
    begin(from) {
      const address = networkOf(from)
      const before = known.get(address)
      if (before && now() < before.until) return Math.ceil((before.until - now()) / 1000)
      fill()
      if (left < 1) return Math.ceil((1 - left) * together.secondsForOne)
      left -= 1
      const wrong = before && now() - before.last < forgottenAfter * 1000 ? before.wrong + 1 : 1
      // The one that tried last stands last: who is forgotten for want of room tried longest ago.
      known.delete(address)
      const oldest = known.keys().next().value
      if (known.size >= mostAddresses && oldest !== undefined) known.delete(oldest)
      known.set(address, { wrong, until: now() + secondsAfter(wrong) * 1000, last: now() })
      return 0
    },
    right(from) {
      known.delete(networkOf(from))
      left = Math.min(together.atOnce, left + 1)
    },
  }
}

/**
 * Whom an address belongs to: IPv4 itself, of IPv6 the net of 64 bits, for a household has all of one.
 *
 * @example
 * ['192.0.2.7', '::ffff:192.0.2.7', '2001:db8:1:2:3:4:5:6', '2001:db8::9', '::1'].map(networkOf) // ['192.0.2.7', '192.0.2.7', '2001:db8:1:2', '2001:db8:0:0', '0:0:0:0']
 */
export function networkOf(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1]
  if (mapped !== undefined) return mapped
  if (!address.includes(':')) return address
  const [before = '', after] = address.split('::')
  const groups = before === '' ? [] : before.split(':')
  const zeros = after === undefined ? 0 : 8 - groups.length - (after === '' ? 0 : after.split(':').length)
  const all = [...groups, ...Array<string>(Math.max(0, zeros)).fill('0'), ...(after ?? '').split(':')]
  return all.slice(0, 4).join(':')
}
