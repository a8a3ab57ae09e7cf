import { onTestFinished } from 'vitest'
import { installPackage } from './install-package.ts'
import { type Cluster, postgresBinaries, startCluster } from './postgres-binaries.ts'

/** A real PostgreSQL of this test's own, which it may end and start again; gone after it. */
export async function ownPostgres(): Promise<Cluster> {
  const why = postgresBinaries() ? undefined : installPackage('postgresql')
  const binaries = postgresBinaries()
  if (!binaries) throw new Error(`There are no programs of PostgreSQL to start: ${why}.`)
  const cluster = await startCluster(binaries, { keepsCommits: true })
  onTestFinished(() => cluster.stop())
  return cluster
}
