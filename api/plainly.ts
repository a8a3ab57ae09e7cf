import { CannotStart } from '#db/cannot-start.ts'

/**
 * Runs a program to its end or to its start. What keeps it from starting is one plain sentence on stderr and exit
 * code 1; anything else is a bug, and its trace is shown without the lines that hold a whole minified library.
 */
export async function plainly(program: () => Promise<void>): Promise<void> {
  try {
    await program()
  } catch (error) {
    console.error(error instanceof CannotStart ? error.message : traceOf(error))
    process.exit(1)
  }
}

function traceOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error)
  const lines = (error.stack ?? error.message).split('\n').filter((line) => line.length < 400)
  return lines.slice(0, 15).join('\n')
}
