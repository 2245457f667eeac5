import { join } from 'node:path'
import { firstLoadScripts } from './scripts/first-load.mjs'

const path = firstLoadScripts(join(import.meta.dirname, 'dist', 'web'))

/** What a phone has to fetch before the page answers. Brotli is what the server sends; gzip for those that take no more. */
export default [
  { name: 'script of the first load, brotli', path, brotli: true, limit: '200 kB' },
  { name: 'script of the first load, gzip', path, gzip: true, brotli: false, limit: '245 kB' },
]
