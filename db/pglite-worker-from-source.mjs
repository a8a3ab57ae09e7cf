// Reads pglite-worker.ts where nothing was compiled: in tests, scripts and development. A worker thread does not
// take over the hooks of tsx from a flag on Node 20, so they are asked for in here.
import { tsImport } from 'tsx/esm/api'

await tsImport('./pglite-worker.ts', import.meta.url)
