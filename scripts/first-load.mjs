import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Every script of the built page that must arrive before it can answer: what index.html names, the engine's thread, and all that these
 * import by name. Parts that are asked for later are not among them, but for those that `later` names.
 */
export function firstLoadScripts(folder, later = []) {
  const html = readFileSync(join(folder, 'index.html'), 'utf8')
  const named = [...html.matchAll(/(?:src|href)="\/(assets\/[^"]+\.js)"/gu)].map(([, path]) => path)
  const scripts = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.js'))
  const threads = scripts.filter((name) => name.startsWith('engine.worker-'))
  const after = later.map((part) => scripts.find((name) => name.startsWith(`${part}-`)) ?? `${part}-?.js: no such part`)
  if (named.length === 0 || threads.length !== 1)
    throw new Error(
      `${folder}: ${named.length} scripts in index.html and ${threads.length} threads of the engine; expected some and one`,
    )
  const found = new Set()
  const waiting = [...named, ...[...threads, ...after].map((name) => `assets/${name}`)]
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    if (found.has(path)) continue
    found.add(path)
    waiting.push(...imported(readFileSync(join(folder, path), 'utf8')).map((name) => `assets/${name}`))
  }
  return [...found].toSorted().map((path) => join(folder, path))
}

/** Names that a built module imports outright: `import ... from"./x.js"` and `export ... from"./x.js"`, not `import("./x.js")`. */
function imported(code) {
  return [...code.matchAll(/(?:\bfrom|\bimport)\s*["'`]\.\/([\w.-]+\.js)["'`]/gu)].map(([, name]) => name)
}
