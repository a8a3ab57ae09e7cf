import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

/**
 * Installs a package of the system where we may: as root, with apt-get. Says so, since it changes the machine.
 *
 * @returns Why it could not be had, or undefined when it is there now.
 */
export function installPackage(name: string): string | undefined {
  if (process.getuid?.() !== 0) return `${name} is not installed, and only root may install it`
  if (!existsSync('/usr/bin/apt-get')) return `${name} is not installed, and this system has no apt-get`
  console.log(`Installing ${name} with apt-get, once.`)
  // RUNLEVEL=1 keeps the package from starting a service of its own.
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive', RUNLEVEL: '1' }
  const patient = ['-o', 'DPkg::Lock::Timeout=300', '-o', 'Acquire::Retries=3']
  for (const command of [['update'], ['install', '-y', '--no-install-recommends', name]]) {
    const run = spawnSync('apt-get', [...patient, ...command], {
      env,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    if (run.status !== 0 && command[0] === 'install')
      return `apt-get install ${name} failed: ${(run.stderr || run.error?.message || '').trim().split('\n').slice(-3).join(' ')}`
  }
  return undefined
}
