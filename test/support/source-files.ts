import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder that holds package.json. */
export const root = fileURLToPath(new URL('../..', import.meta.url))

/** The sources of a folder, by their path from the root: `api/science/units.ts`. */
export function sourceFiles(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'))
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .sort()
}

export const textOf = (file: string): string => readFileSync(join(root, file), 'utf8')

/** The line, from 1, of a place in a text. */
export const lineAt = (text: string, place: number): number => text.slice(0, place).split('\n').length
