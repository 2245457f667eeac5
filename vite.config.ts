import { join } from 'node:path'
import { defineConfig } from 'vite'
import { yamlModules } from './scripts/yaml-modules.mjs'

/** The page: Preact without a framework plugin; the workers are modules of their own. */
export default defineConfig({
  root: join(import.meta.dirname, 'src', 'web'),
  base: '/',
  plugins: [yamlModules],
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: { format: 'es', plugins: () => [yamlModules] },
  build: { outDir: join(import.meta.dirname, 'dist', 'web'), emptyOutDir: true, target: 'es2022' },
})
