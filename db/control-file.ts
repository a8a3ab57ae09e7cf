/** The file of a PostgreSQL database that says what state the others are in, and how it is laid out by version 18. */
export const controlFile = 'global/pg_control'
const bytesInAll = 8192
const layout = 1800
/** Where the checksum of what stands before it lies, as the embedded database lays the file out. */
const checksumAt = 292

/**
 * What is wrong with a control file, as the end of a sentence; undefined when it is whole.
 * Source: PostgreSQL 18, src/include/catalog/pg_control.h.
 */
export function faultOfControlFile(bytes: Buffer): string | undefined {
  if (bytes.length === 0) return `${controlFile} is empty`
  if (bytes.length !== bytesInAll) return `${controlFile} is cut short or was added to`
  const isWhole =
    bytes.readUInt32LE(8) === layout &&
    bytes.readUInt32LE(checksumAt) === crc32c(bytes.subarray(0, checksumAt))
  return isWhole ? undefined : `${controlFile} is damaged`
}

/**
 * The checksum CRC-32C (Castagnoli) of RFC 3720, appendix B.4.
 *
 * @example
 * crc32c(Buffer.alloc(32)).toString(16) // '8a9136aa'
 */
export function crc32c(bytes: Uint8Array): number {
  let rest = 0xffffffff
  for (const byte of bytes) {
    rest ^= byte
    for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0x82f63b78 : rest >>> 1
  }
  return (rest ^ 0xffffffff) >>> 0
}
