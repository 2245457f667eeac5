import { join } from 'node:path'
import { firstLoadScripts } from './scripts/first-load.mjs'

const page = join(import.meta.dirname, 'dist', 'web')
const path = firstLoadScripts(page)

/** What a phone has to fetch before the page works. Brotli is what the server sends; gzip for those that take no more. */
export default [
  { name: 'script of the first load, brotli', path, brotli: true, limit: '200 kB' },
  { name: 'script of the first load, gzip', path, gzip: true, brotli: false, limit: '245 kB' },
  {
    name: 'and the views that an answer is drawn with, brotli',
    path: firstLoadScripts(page, ['answer']),
    brotli: true,
    limit: '225 kB',
  },
]
