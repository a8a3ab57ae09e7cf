import { posix } from 'node:path'
import { lineAt, textOf } from './source-files.ts'

export type Import = {
  readonly file: string
  readonly line: number
  /** A path from the root, or a package's name. */
  readonly target: string
  /** Nothing of it is there when the code runs. */
  readonly typeOnly: boolean
}

const statement =
  /^[ \t]*(?:import|export)\s+(type\s+)?(?:([\w$*{][\w$\s,*{}]*?)\s+from\s+)?['"]([^'"]+)['"]/gm
const dynamic = /\bimport\(\s*['"]([^'"]+)['"]\s*[),]/g

/** Every import of a file, static and dynamic; those that stand in comments do not count. */
export function importsOf(file: string): Import[] {
  const text = withoutComments(textOf(file))
  const found: Import[] = []
  for (const match of text.matchAll(statement)) {
    const [, type, names = '', from = ''] = match
    const line = lineAt(text, match.index + match[0].length)
    found.push({ file, line, target: resolve(file, from), typeOnly: Boolean(type) || allTypes(names) })
  }
  for (const match of text.matchAll(dynamic)) {
    const before = text.slice(0, match.index)
    // typeof import('…') and import('…').Name in a type are types; they are rare enough to be asked for as imports.
    found.push({
      file,
      line: lineAt(before, before.length),
      target: resolve(file, match[1] ?? ''),
      typeOnly: false,
    })
  }
  return found
}

function allTypes(names: string): boolean {
  const inside = /^\{([\s\S]*)\}$/.exec(names.trim())?.[1]
  const list =
    inside
      ?.split(',')
      .map((name) => name.trim())
      .filter(Boolean) ?? []
  return list.length > 0 && list.every((name) => name.startsWith('type '))
}

function resolve(file: string, from: string): string {
  if (from.startsWith('#')) return from.slice(1)
  if (from.startsWith('.')) return posix.join(posix.dirname(file), from)
  return from
}

// Blanked, not cut: a line keeps its number.
function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, (comment) => comment.replace(/[^\n]/g, ' '))
}
