import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto'

/** Says whether what was typed is the phrase. */
export type PhraseCheck = (typed: string) => Promise<boolean>

/**
 * Keeps a phrase as its scrypt hash alone, under a salt of this process, and compares in constant time.
 * N = 2¹⁵, r = 8, p = 1 take 32 MiB and about a tenth of a second for each try (RFC 7914; OWASP takes 2¹⁷ for
 * phrases on a disk, which this one never reaches).
 */
export async function accessPhrase(phrase: string): Promise<PhraseCheck> {
  const salt = randomBytes(16)
  const kept = await hashOf(phrase, salt)
  return async (typed) => timingSafeEqual(await hashOf(typed, salt), kept)
}

function hashOf(text: string, salt: Buffer): Promise<Buffer> {
  // The same letter may be typed as one sign or as two.
  const plain = text.trim().normalize('NFKC')
  return new Promise((resolve, reject) =>
    scrypt(plain, salt, 32, { N: 2 ** 15, r: 8, p: 1, maxmem: 64 * 1024 * 1024 }, (error, hash) =>
      error ? reject(error) : resolve(hash),
    ),
  )
}
