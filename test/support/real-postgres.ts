import { request } from 'node:http'
import { installPackage } from './install-package.ts'
import { type Cluster, postgresBinaries, startCluster } from './postgres-binaries.ts'

export type RealPostgres = Pick<Cluster, 'url' | 'stop'> & { readonly how: string }

/**
 * A real PostgreSQL server for the tests, the first that can be had: TEST_DATABASE_URL; a container where a Docker
 * engine answers; installed server programs in a temporary folder; the same after installing them, where root may.
 *
 * @throws One error that names every way that was tried.
 */
export async function realPostgres(): Promise<RealPostgres> {
  const given = process.env.TEST_DATABASE_URL
  if (given) return { how: 'TEST_DATABASE_URL', url: given, stop: async () => {} }
  const tried = ['TEST_DATABASE_URL is not set']

  if (await dockerAnswers()) {
    try {
      return await startContainer()
    } catch (error) {
      tried.push(`a Docker engine answers, but: ${(error as Error).message}`)
    }
  } else tried.push('no Docker engine answers')

  if (!postgresBinaries()) {
    const why = installPackage('postgresql')
    if (why) tried.push(why)
  }
  const binaries = postgresBinaries()
  if (binaries) {
    try {
      return { how: `the programs in ${binaries}`, ...(await startCluster(binaries)) }
    } catch (error) {
      tried.push(`the programs in ${binaries}: ${(error as Error).message}`)
    }
  } else tried.push('there is no initdb and postgres on the PATH or in /usr/lib/postgresql')
  throw new Error(`There is no PostgreSQL for the tests: ${tried.join('; ')}.`)
}

async function startContainer(): Promise<RealPostgres> {
  // Half a second of loading, for those alone who have an engine.
  const { PostgreSqlContainer } = await import('@testcontainers/postgresql')
  const image = 'postgres:17-alpine'
  const container = await new PostgreSqlContainer(image).start()
  return {
    how: `a container of ${image}`,
    url: container.getConnectionUri(),
    stop: async () => {
      await container.stop()
    },
  }
}

/** Does an engine answer? That the docker program is installed proves nothing. */
function dockerAnswers(): Promise<boolean> {
  const host = process.env.DOCKER_HOST ?? 'unix:///var/run/docker.sock'
  const where = host.startsWith('unix://')
    ? { socketPath: host.slice('unix://'.length) }
    : { hostname: new URL(host).hostname, port: new URL(host).port || '2375' }
  return new Promise((resolve) => {
    const ping = request({ ...where, path: '/_ping', timeout: 2000 }, (answer) => {
      answer.resume()
      resolve(answer.statusCode === 200)
    })
    ping.on('timeout', () => ping.destroy())
    ping.on('error', () => resolve(false))
    ping.end()
  })
}
