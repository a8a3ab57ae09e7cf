import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const kept = globalThis as { runsClearBuilt?: Promise<void> }

/** Builds the tool as `npm start` would, once for all projects that start it. */
export default function builtOnce(): Promise<void> {
  kept.runsClearBuilt ??= build()
  return kept.runsClearBuilt
}

function build(): Promise<void> {
  const start = fileURLToPath(new URL('../../api/start.mjs', import.meta.url))
  return new Promise((resolve, reject) => {
    const building = spawn(process.execPath, [start, '--build'], { stdio: ['ignore', 'ignore', 'inherit'] })
    building.once('error', reject)
    building.once('exit', (code) => (code === 0 ? resolve() : reject(new Error('The tool does not build.'))))
  })
}
