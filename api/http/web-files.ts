import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { extname, join, relative, sep } from 'node:path'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'
import type { MiddlewareHandler } from 'hono'
import { pagePolicy, plainHeaders } from './security-headers.ts'

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
}
const worthPacking = /\.(html|js|css|json|webmanifest|svg|txt)$/

type Packing = 'br' | 'gzip'
type WebFile = {
  readonly plain: Buffer
  readonly packed: Partial<Record<Packing, Buffer>>
  readonly headers: Readonly<Record<string, string>>
}

/**
 * Serves the built pages from memory: they are few and small, and a name that is not among them reaches no disk.
 * Files with a fingerprint in their name never change, so a browser keeps them; the rest is asked for again and
 * mostly answered "not modified". Any other address outside `/api` is a page of the web application.
 */
export function webFiles(folder: string): MiddlewareHandler {
  const files = readFolder(folder)
  const page = files.get('/index.html')
  return async (c, next) => {
    const { path } = c.req
    if (path === '/api' || path.startsWith('/api/')) return next()
    const file = files.get(path) ?? (extname(path) === '' ? page : undefined)
    if (!file) return next()
    if (c.req.header('if-none-match') === file.headers.etag) return c.body(null, 304, file.headers)
    const accepted = c.req.header('accept-encoding') ?? ''
    const packing = (['br', 'gzip'] as const).find((it) => file.packed[it] && accepted.includes(it))
    const bytes = (packing && file.packed[packing]) ?? file.plain
    return c.body(new Uint8Array(bytes), 200, {
      ...file.headers,
      ...(packing ? { 'content-encoding': packing } : {}),
      'content-length': String(bytes.length),
    })
  }
}

function readFolder(folder: string): Map<string, WebFile> {
  const files = new Map<string, WebFile>()
  if (!existsSync(folder)) return files
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue
    const file = join(entry.parentPath, entry.name)
    const address = `/${relative(folder, file).split(sep).join('/')}`
    files.set(address, readFile(file, address))
  }
  return files
}

function readFile(file: string, address: string): WebFile {
  const plain = readFileSync(file)
  const isPage = address.endsWith('.html')
  const forGood = address.startsWith('/assets/')
  return {
    plain,
    packed: worthPacking.test(address) ? pack(plain) : {},
    headers: {
      ...plainHeaders,
      'content-type': mediaTypes[extname(address)] ?? 'application/octet-stream',
      'cache-control': forGood ? 'public, max-age=31536000, immutable' : 'no-cache',
      etag: `"${createHash('sha256').update(plain).digest('base64url').slice(0, 22)}"`,
      vary: 'accept-encoding',
      ...(isPage ? { 'content-security-policy': pagePolicy(plain.toString()) } : {}),
    },
  }
}

function pack(plain: Buffer): Partial<Record<Packing, Buffer>> {
  const params = { [constants.BROTLI_PARAM_QUALITY]: 9 }
  return { br: brotliCompressSync(plain, { params }), gzip: gzipSync(plain) }
}
