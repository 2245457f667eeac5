/**
 * Makes a fresh clone ready, with nothing but Node: installs what is missing, builds, and for the tests looks for a browser.
 * Says what it does and why it takes a while; does nothing when nothing has changed.
 *
 *   node scripts/setup.mjs run     dependencies, build
 *   node scripts/setup.mjs test    dependencies, browser for the page tests
 */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { pageBuilt, sourceStamp } from './page-build.mjs'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const purpose = process.argv[2] ?? 'run'
const say = (words) => console.error(`quenchwright: ${words}`)

function fail(words) {
  say(words)
  process.exit(1)
}

function run(command, args, options = {}) {
  return spawnSync(command, args, { cwd: root, stdio: ['ignore', process.stderr, process.stderr], ...options }).status === 0
}

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19))
  fail(`Node ${process.versions.node} is too old; 20.19 or newer is needed (22 or 24 better).`)

installDependencies()
if (purpose === 'run') build()
if (purpose === 'test') findBrowser()

function installDependencies() {
  const stampFile = join(root, 'node_modules', '.setup-stamp')
  const stamp = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .update(process.versions.modules)
    .digest('hex')
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return
  say('installing the libraries named in package-lock.json (about half a minute, once) ...')
  if (!run('npm', ['ci', '--no-fund', '--no-audit', '--loglevel=warn']))
    fail('npm ci failed; the lines above say why. Is the network up?')
  writeFileSync(stampFile, stamp)
}

function build() {
  const stampFile = join(root, 'dist', '.built')
  const stamp = sourceStamp()
  const main = join(root, 'dist', 'cli', 'main.js')
  if (existsSync(main) && existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp && pageBuilt(say)) return
  say(existsSync(main) ? 'building what has changed ...' : 'building (a few seconds, once) ...')
  const compiler = join(root, 'node_modules', 'typescript', 'bin', 'tsc')
  if (!run(process.execPath, [compiler, '-b'])) fail('the build failed; the lines above say where.')
  if (!pageBuilt(say)) fail('the page could not be built; the lines above say where.')
  writeFileSync(stampFile, stamp)
}

/** Report and page are opened in a real browser by the tests; without one they count as skipped, and fail under CI. */
function findBrowser() {
  const browser = process.env.CHROMIUM ?? '/usr/bin/chromium'
  if (existsSync(browser)) return
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo', '-n']
  const [command, ...rest] = [...asRoot, 'apt-get']
  if (process.env.NO_APT !== '1' && existsSync('/usr/bin/apt-get')) {
    say('installing Chromium from Debian for the page tests (about half a minute, once) ...')
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    if (run(command, [...rest, 'update', '-qq'], { env }))
      run(command, [...rest, 'install', '-y', '-qq', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'], { env })
  }
  if (existsSync(browser)) return
  console.error('!'.repeat(78))
  console.error('No Chromium found: the tests that open the page and the report in a browser are skipped.')
  console.error('Install it (Debian: apt-get install chromium) or set CHROMIUM to its path.')
  console.error('!'.repeat(78))
  if (process.env.CI) process.exit(1)
}
