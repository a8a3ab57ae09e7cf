// npm start: builds what is older than its sources, then runs it in this very process. Plain JavaScript, since
// nothing is compiled yet when it begins.
//   --build  does no more than that   --into=<folder>  builds there instead of in dist   --demo  on the example studio, in a folder of its own   --dev  from the sources, reloading
import { spawn, spawnSync } from 'node:child_process'
import { copyFileSync, existsSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const has = (/** @type {string} */ flag) => process.argv.includes(flag)
const into = process.argv.find((it) => it.startsWith('--into='))?.slice('--into='.length)
const dist = into ? resolve(into) : join(root, 'dist')
const stamp = join(dist, 'built')

if (has('--demo')) process.env.DATA_DIR ??= './data/demo'

if (has('--dev')) develop()
else {
  if (isOld()) build()
  if (!has('--build')) await import(pathToFileURL(join(dist, 'api/main.js')).href)
}

function isOld() {
  if (!existsSync(stamp)) return true
  const built = statSync(stamp).mtimeMs
  const sources = ['api', 'db', 'web', 'package.json', 'package-lock.json', 'tsconfig.json']
  return sources.some((name) => newest(join(root, name)) > built)
}

/** Folders count too: a file that was taken away changes its folder's time. */
function newest(/** @type {string} */ path) {
  const { mtimeMs } = statSync(path)
  if (!statSync(path).isDirectory()) return mtimeMs
  return Math.max(mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))))
}

function build() {
  console.log('Building …')
  for (const folder of ['api', 'db']) rmSync(join(dist, folder), { recursive: true, force: true })
  run('typescript/bin/tsc', '-p', 'api/tsconfig.build.json', '--outDir', dist)
  run(
    'vite/bin/vite.js',
    'build',
    '--config',
    'web/vite.config.ts',
    '--logLevel',
    'warn',
    '--outDir',
    join(dist, 'web'),
  )
  const tables = 'db/sample-trials'
  for (const name of readdirSync(join(root, tables)).filter((it) => it.endsWith('.csv')))
    copyFileSync(join(root, tables, name), join(dist, tables, name))
  // The compiled tree has the names of the sources, and its own say where they lead.
  const imports = { '#api/*.ts': './api/*.js', '#db/*.ts': './db/*.js' }
  writeFileSync(join(dist, 'package.json'), JSON.stringify({ type: 'module', imports }))
  writeFileSync(stamp, '')
}

function run(/** @type {string} */ tool, /** @type {string[]} */ ...options) {
  const file = join(root, 'node_modules', tool)
  if (!existsSync(file))
    fail('The tools to build with are not installed; run npm ci (without --omit=dev) first.')
  const env = { ...process.env, NODE_ENV: 'production' }
  const { status } = spawnSync(process.execPath, [file, ...options], { cwd: root, env, stdio: 'inherit' })
  if (status !== 0) fail('It was not possible to build; the lines above say why.')
}

function fail(/** @type {string} */ sentence) {
  console.error(sentence)
  process.exit(1)
}

/** The API by tsx, started anew at each change, and the pages by Vite, which asks the API for `/api`. */
function develop() {
  const port = process.env.PORT || '4100'
  // The pages come from Vite, so its address is the tool’s own as well.
  const hosts = [process.env.ALLOWED_HOSTS, 'localhost:5173', '127.0.0.1:5173'].filter(Boolean).join(',')
  const both = [
    ['tsx/dist/cli.mjs', 'watch', 'api/main.ts', ...(has('--demo') ? ['--demo'] : [])],
    ['vite/bin/vite.js', '--config', 'web/vite.config.ts'],
  ].map(([tool = '', ...options]) =>
    spawn(process.execPath, [join(root, 'node_modules', tool), ...options], {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, PORT: port, ALLOWED_HOSTS: hosts },
    }),
  )
  const endAll = () => both.forEach((it) => void it.kill('SIGTERM'))
  for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, endAll)
  for (const it of both)
    it.on('exit', (code) => {
      endAll()
      process.exitCode ||= code ?? 0
    })
}
