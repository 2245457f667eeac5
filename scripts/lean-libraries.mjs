import { readFileSync } from 'node:fs'

/**
 * Vite, in the build only: of some libraries a page runs a part, and carries no more than that part. Each entry says what is left out
 * and why nothing can miss it. The libraries themselves, and what they compute, stay as they are.
 */
export function leanLibraries(side) {
  return {
    name: 'lean-libraries',
    apply: 'build',
    enforce: 'pre',
    resolveId(id, importer) {
      if (id === 'workerpool') return WORKERPOOL
      // Only asked for when workerpool finds itself in Node.
      if (NODE_ONLY.has(id) && importer?.includes('/workerpool/')) return NOTHING
      return undefined
    },
    load(id) {
      if (id === WORKERPOOL) return workerpool[side]
      if (id === NOTHING) return { code: 'export {}', moduleSideEffects: false }
      const path = id.replaceAll('\\', '/')
      if (HOLLOW.test(path)) return hollow(path)
      return Object.entries(instead).find(([end]) => path.endsWith(end))?.[1]
    },
  }
}

const WORKERPOOL = '\0lean-workerpool'
const NOTHING = '\0lean-nothing'
const NODE_ONLY = new Set(['worker_threads', 'child_process', 'os'])

/**
 * Workerpool from its own sources and as modules: the page takes the pool, the thread takes the other end. Its bundle for browsers
 * holds both, for the engines of ten years ago.
 */
const workerpool = {
  page: `
import Pool from 'workerpool/src/Pool.js'
export const pool = (script, options) => new Pool(script, options)
`,
  thread: `
import thread from 'workerpool/src/worker.js'
import Transfer from 'workerpool/src/transfer.js'
export const worker = (methods, options) => thread.add(methods, options)
export const workerEmit = (payload) => thread.emit(payload)
export { Transfer }
`,
}

const instead = {
  // The text of a thread for functions sent over as text; ours is a file of its own.
  '/workerpool/src/generated/embeddedWorker.js': 'module.exports = ""',

  // Properties fixed the way every browser has had for ten years; the library also carries one for those before, with its error texts.
  '/@stdlib/utils-define-nonenumerable-read-only-property/lib/index.js':
    'module.exports = (object, name, value) => { Object.defineProperty(object, name, { value }) }',
  // Typed arrays are there in every browser that the page runs in; the library looks, and carries substitutes.
  '/@stdlib/array-float64/lib/index.js': 'module.exports = Float64Array',
  '/@stdlib/array-uint32/lib/index.js': 'module.exports = Uint32Array',
  '/@stdlib/array-uint16/lib/index.js': 'module.exports = Uint16Array',
  '/@stdlib/array-uint8/lib/index.js': 'module.exports = Uint8Array',
}

/** Schemas are checked against in the page and never printed as JSON Schema: that is the command line's. */
const HOLLOW = /\/zod\/v4\/core\/(?:to-json-schema|json-schema-processors)\.js$/u

/** A module with the same exports, all of which refuse. */
function hollow(path) {
  const names = [...readFileSync(path, 'utf8').matchAll(/^export (?:const|function|let|var) (\w+)/gmu)].map(([, name]) => name)
  if (names.length === 0) throw new Error(`${path}: no export was found in it; scripts/lean-libraries.mjs expects some`)
  return `const refuse = () => { throw new Error('JSON Schema is printed by the command line, not by the page') }
export { ${names.map((name) => `refuse as ${name}`).join(', ')} }`
}
