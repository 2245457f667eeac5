import { defineConfig } from 'vitest/config'
import { yamlModules } from './scripts/yaml-modules.mjs'

export default defineConfig({
  plugins: [yamlModules],
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['src/**/*.test.ts', 'src/**/*.test.tsx', 'test/**/*.test.ts'],
    testTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
  },
})
