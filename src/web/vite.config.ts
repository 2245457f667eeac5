import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vite'
import { yamlModules } from '../../scripts/yaml-modules.mjs'

const here = dirname(fileURLToPath(import.meta.url))

/** The page: Preact without a framework plugin; the workers are modules of their own. */
export default defineConfig({
  root: here,
  base: '/',
  plugins: [yamlModules],
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', plugins: () => [yamlModules] },
  build: { outDir: '../../dist/web', emptyOutDir: true, target: 'es2022' },
})
