import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { extname, join } from 'node:path'
import { brotliCompressSync, constants, gzipSync } from 'node:zlib'

const TEXT = new Set(['.js', '.css', '.html', '.svg', '.webmanifest', '.txt'])
/** Smaller than this fits in one packet as it is. */
const LEAST_BYTES = 1200

/** Vite: beside each text of the build the same in brotli and in gzip, once and as small as it goes; the server hands those out. */
export function compressed() {
  let folder = ''
  return {
    name: 'compressed',
    apply: 'build',
    configResolved(config) {
      folder = config.build.outDir
    },
    // After everything else is written, the service worker too.
    closeBundle: {
      sequential: true,
      order: 'post',
      handler() {
        for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
          if (!TEXT.has(extname(name))) continue
          const path = join(folder, name)
          const bytes = readFileSync(path)
          if (bytes.length < LEAST_BYTES) continue
          writeFileSync(`${path}.br`, brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }))
          writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }))
        }
      },
    },
  }
}
