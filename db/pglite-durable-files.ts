import { fsyncSync } from 'node:fs'
import { PGlite } from '@electric-sql/pglite'
import { NodeFS } from '@electric-sql/pglite/nodefs'

type Module = { NODEFS: { stream_ops: { fsync?: (stream: { nfd: number }) => number } } }

/**
 * Files of the embedded database that reach the disk. PGlite's own file system has no fsync at all: after a power
 * cut an acknowledged reading could be gone. This one hands each fsync of the database on to the system.
 */
export class DurableFiles extends NodeFS {
  override async init(...[database, options]: Parameters<NodeFS['init']>): ReturnType<NodeFS['init']> {
    const ready = await super.init(database, options)
    ready.emscriptenOpts.preRun = [
      ...[ready.emscriptenOpts.preRun ?? []].flat(),
      (module: unknown) => {
        const { stream_ops } = (module as Module).NODEFS
        stream_ops.fsync = (stream) => {
          fsyncSync(stream.nfd)
          return 0
        }
      },
    ]
    return ready
  }
}

/**
 * PGlite starts its server with -F (no fsync): taken out. The server's usual sync method, fdatasync, does not reach
 * the file system above, fsync does. The log's sizes: there is no checkpointer to keep them small (pglite-upkeep.ts).
 */
export const durableStart: string[] = [
  ...PGlite.defaultStartParams.filter((parameter) => parameter !== '-F'),
  ...['-c', 'wal_sync_method=fsync', '-c', 'max_wal_size=64MB', '-c', 'min_wal_size=32MB'],
]
