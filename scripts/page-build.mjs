/**
 * Builds the page, unless the last build was of the same sources. A build is made aside and put in place whole: a server that is
 * handing out the one before is never found with half a page.
 *
 *   node scripts/page-build.mjs
 */
import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = dirname(dirname(fileURLToPath(import.meta.url)))
const page = join(root, 'dist', 'web')
const stampFile = join(root, 'dist', 'web.stamp')

/** All that a build is made of, in one short text: unlike when any of it changed. Tests are no part of it. */
export function sourceStamp() {
  const hash = createHash('sha256').update(process.versions.modules)
  for (const path of [
    'src',
    'examples',
    'scripts',
    'package.json',
    'package-lock.json',
    'tsconfig.base.json',
    'vite.config.ts',
  ].flatMap(filesUnder))
    hash.update(`\0${path}\0`).update(readFileSync(join(root, path)))
  return hash.digest('hex')
}

function filesUnder(path) {
  if (!statSync(join(root, path)).isDirectory()) return [path]
  return readdirSync(join(root, path), { recursive: true, withFileTypes: true })
    .filter((each) => each.isFile() && !/\.test(?:-data)?\./u.test(each.name))
    .map((each) => join(each.parentPath.slice(root.length + 1), each.name))
    .toSorted()
}

/** True when the page stands as its sources would have it; `false` says that the build failed, and its own words say why. */
export function pageBuilt(say = () => {}) {
  const stamp = sourceStamp()
  if (existsSync(join(page, 'index.html')) && existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp) return true
  say('building the page (a few seconds, once) ...')
  const aside = `${page}.${process.pid}`
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js')
  const made = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn', '--outDir', aside, '--emptyOutDir'], {
    cwd: root,
    stdio: ['ignore', process.stderr, process.stderr],
    // Whoever asks for it, a test too: the page that is handed out is the one for use.
    env: { ...process.env, NODE_ENV: 'production' },
  })
  if (made.status !== 0) {
    rmSync(aside, { recursive: true, force: true })
    return false
  }
  mkdirSync(dirname(page), { recursive: true })
  rmSync(page, { recursive: true, force: true })
  renameSync(aside, page)
  writeFileSync(stampFile, stamp)
  return true
}

if (process.argv[1] === fileURLToPath(import.meta.url) && !pageBuilt()) process.exit(1)
