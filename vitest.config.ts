import { defineConfig } from 'vitest/config'
import { yamlModules } from './scripts/yaml-modules.mjs'

export default defineConfig({
  plugins: [yamlModules],
  resolve: { conditions: ['source'] },
  ssr: { resolve: { conditions: ['source'] } },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    testTimeout: 60_000,
    hookTimeout: 60_000,
    pool: 'forks',
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: 'parts',
          include: ['src/**/*.test.ts', 'src/**/*.test.tsx', 'test/**/*.test.ts'],
          exclude: ['test/e2e/**'],
        },
      },
      // In a real browser, with the page as it is built; a busy machine of two cores is given its time.
      {
        extends: true,
        test: {
          name: 'page',
          include: ['test/e2e/**/*.test.ts'],
          globalSetup: ['test/e2e/built-page.ts'],
          testTimeout: 180_000,
          hookTimeout: 180_000,
        },
      },
    ],
  },
})
