import { join } from 'node:path'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { compressed } from './scripts/compressed.mjs'
import { firstPart } from './scripts/first-part.mjs'
import { leanLibraries } from './scripts/lean-libraries.mjs'
import { licences } from './scripts/licences.mjs'
import { yamlModules } from './scripts/yaml-modules.mjs'

/** No comments in what is sent; the licences are in a file of their own. */
const rolldownOptions = { output: { comments: false }, checks: { pluginTimings: false } }
const licencesOf = licences('licences.txt', ['@fontsource-variable/source-sans-3'])

/** The page: Preact without a framework plugin; the workers are modules of their own; kept by a service worker for use without network. */
export default defineConfig({
  root: join(import.meta.dirname, 'src', 'web'),
  base: '/',
  plugins: [
    yamlModules,
    leanLibraries('page'),
    firstPart('page', { answer: '/app/answer-views.ts' }),
    licencesOf.page,
    VitePWA({
      registerType: 'prompt',
      injectRegister: false,
      manifest: {
        id: '/',
        name: 'Quenchwright',
        short_name: 'Quenchwright',
        description:
          'From a piece of bar to a tool that works: heat, quench and temper worked out for this piece, this bar and this shop.',
        start_url: '/',
        scope: '/',
        display: 'standalone',
        // Paper of look.css; the page itself follows the ground that is chosen.
        background_color: '#f8f4ea',
        theme_color: '#f8f4ea',
        categories: ['utilities', 'productivity'],
        icons: [
          { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
          { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      // The manifest's own icons come by the pattern: named twice, they would be kept twice.
      includeManifestIcons: false,
      workbox: {
        globPatterns: ['**/*.{html,js,css,woff2,svg,png,webmanifest}'],
        // Workbox warns and leaves out what is larger: the engine must never be left out.
        maximumFileSizeToCacheInBytes: 4_000_000,
        navigateFallback: '/index.html',
        cleanupOutdatedCaches: true,
        // The first visit is kept at once; a newer edition still waits to be asked for.
        clientsClaim: true,
      },
    }),
    compressed(),
  ],
  resolve: { conditions: ['source', 'module', 'browser', 'development|production'] },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  worker: {
    format: 'es',
    plugins: () => [yamlModules, leanLibraries('thread'), firstPart('engine'), licencesOf.thread],
    rolldownOptions,
  },
  build: {
    outDir: join(import.meta.dirname, 'dist', 'web'),
    emptyOutDir: true,
    target: 'es2022',
    rolldownOptions,
  },
})
