import { buildTool } from './built-tool.ts'

const kept = globalThis as { runsClearBuilt?: Promise<void> }

/** Builds the tool once for all projects that use it. */
export default function builtOnce(): Promise<void> {
  kept.runsClearBuilt ??= buildTool()
  return kept.runsClearBuilt
}
