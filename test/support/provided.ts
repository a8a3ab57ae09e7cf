/** What the preparations of a whole run (`*-once.ts`) tell each test file. */
declare module 'vitest' {
  interface ProvidedContext {
    /** A migrated, empty embedded database as a file, or the address of a server's migrated template. */
    database: { kind: 'embedded'; copy: string } | { kind: 'server'; url: string; template: string }
    /** A data folder with a migrated, empty database in it, to be copied. */
    dataDir: string
    /** Where the one browser of the run is spoken to: `ws://…`. */
    browser: string
    /** What could not be had on this machine; every test of the project is then skipped, and counted so. */
    missing: string | null
  }
}

export type {}
