import { spawn } from 'node:child_process'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { keptBetweenRuns } from './kept-between-runs.ts'

/** The tool as the tests build it: beside `dist`, so that a tool that runs from there keeps its files. */
export const builtTool = join(keptBetweenRuns, 'built')

/** Builds it as `npm start` would, if a source is newer. */
export function buildTool(): Promise<void> {
  const start = fileURLToPath(new URL('../../api/start.mjs', import.meta.url))
  const flags = ['--build', `--into=${builtTool}`]
  return new Promise((resolve, reject) => {
    const building = spawn(process.execPath, [start, ...flags], { stdio: ['ignore', 'ignore', 'inherit'] })
    building.once('error', reject)
    building.once('exit', (code) => (code === 0 ? resolve() : reject(new Error('The tool does not build.'))))
  })
}
