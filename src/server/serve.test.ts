import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { brotliCompressSync, brotliDecompressSync, gunzipSync, gzipSync } from 'node:zlib'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { pageServer } from './page-server.ts'
import { CannotListen, PageNotBuilt, serve, USUAL_PORT } from './serve.ts'

const folder = mkdtempSync(join(tmpdir(), 'page-'))
const INDEX = '<!doctype html><title>the page</title>'
const SCRIPT = 'console.log("a script that is long enough")\n'.repeat(50)
let server: FastifyInstance

beforeAll(async () => {
  mkdirSync(join(folder, 'assets'))
  const files = { 'index.html': INDEX, 'sw.js': '// worker', 'assets/index-AbCd1234.js': SCRIPT }
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text)
  writeFileSync(join(folder, 'assets/index-AbCd1234.js.br'), brotliCompressSync(SCRIPT))
  writeFileSync(join(folder, 'assets/index-AbCd1234.js.gz'), gzipSync(SCRIPT))
  server = await pageServer(folder)
})
afterAll(async () => {
  await server.close()
  rmSync(folder, { recursive: true, force: true })
})

describe('the page is handed out', () => {
  test.each([
    '/',
    '/bench',
    '/bench/',
    '/rack',
    '/shop',
    '/proof',
    '/piece/0192-ab/shape',
    '/piece/0192-ab',
    '/piece/x/card?from=link',
  ])('%s is the page, asked for anew each time', async (url) => {
    const reply = await server.inject({ url })
    expect(reply.statusCode).toBe(200)
    expect(reply.body).toBe(INDEX)
    expect(reply.headers['content-type']).toContain('text/html')
    expect(reply.headers['cache-control']).toBe('no-cache')
  })

  test.each([
    '/assets/index-Gone.js',
    '/piece',
    '/piece/a/b/c',
    '/package.json',
    '/..%2fpackage.json',
    '/bench.js',
    '/piece/..%2f',
  ])('%s is nothing', async (url) => {
    const reply = await server.inject({ url })
    expect(reply.statusCode).toBe(404)
    expect(reply.body).not.toContain('<title>')
  })

  test('nothing is taken in', async () => {
    const reply = await server.inject({ method: 'POST', url: '/bench', payload: 'x' })
    expect([404, 415]).toContain(reply.statusCode)
  })

  test('hashed files stay with the browser; the service worker does not', async () => {
    const asset = await server.inject({ url: '/assets/index-AbCd1234.js' })
    expect(asset.headers['cache-control']).toBe('public, max-age=31536000, immutable')
    expect((await server.inject({ url: '/sw.js' })).headers['cache-control']).toBe('no-cache')
  })

  test('compressed as the browser takes it', async () => {
    const asked = (encoding: string) =>
      server.inject({ url: '/assets/index-AbCd1234.js', headers: { 'accept-encoding': encoding } })
    const brotli = await asked('gzip, deflate, br')
    expect(brotli.headers['content-encoding']).toBe('br')
    expect(brotli.headers.vary?.toString().toLowerCase()).toContain('accept-encoding')
    expect(brotli.headers['content-type']).toContain('javascript')
    expect(brotli.headers['cache-control']).toContain('immutable')
    expect(brotliDecompressSync(brotli.rawPayload).toString()).toBe(SCRIPT)
    expect(gunzipSync((await asked('gzip')).rawPayload).toString()).toBe(SCRIPT)
    expect((await asked('identity')).body).toBe(SCRIPT)
  })

  test('it may load from here and nowhere else', async () => {
    const policy = String((await server.inject({ url: '/' })).headers['content-security-policy'])
    for (const rule of ["default-src 'self'", "worker-src 'self'", "style-src 'self' 'unsafe-inline'"])
      expect(policy).toContain(rule)
    expect(policy).not.toContain('upgrade-insecure-requests')
    expect(policy).not.toContain('https:')
  })
})

describe('where it listens', () => {
  test('on this machine only, at a free port when asked', async () => {
    const served = await serve({ port: 0, page: folder })
    expect(served.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/u)
    expect(served.elsewhere).toEqual([])
    expect(await (await fetch(`${served.address}/bench`)).text()).toBe(INDEX)
    await served.close()
    await expect(fetch(served.address)).rejects.toThrow()
  })

  test('the usual port taken: another serves', async () => {
    const other = await occupied(USUAL_PORT)
    const served = await serve({ page: folder })
    expect(served.moved).toBe(true)
    expect(served.address).not.toContain(`:${USUAL_PORT}`)
    expect((await fetch(served.address)).status).toBe(200)
    await served.close()
    other?.close()
  })

  test('a port that was asked for and is taken is said, with the mend', async () => {
    const other = await occupied(0)
    const at = other?.address()
    const port = typeof at === 'object' && at !== null ? at.port : 0
    await expect(serve({ port, page: folder })).rejects.toThrow(CannotListen)
    await expect(serve({ port, page: folder })).rejects.toThrow(/taken by another program; give another/u)
    other?.close()
  })

  test('a host that this machine is not is said', async () => {
    await expect(serve({ port: 0, host: '192.0.2.7', page: folder })).rejects.toThrow(/not an address of this machine/u)
  })

  test('no page built is said, with the mend', async () => {
    await expect(serve({ port: 0, page: join(folder, 'assets') })).rejects.toThrow(PageNotBuilt)
    await expect(serve({ port: 0, page: join(folder, 'assets') })).rejects.toThrow(/npm run build/u)
  })
})

/** Takes a port; undefined when something else has it already, which does as well. */
function occupied(port: number): Promise<Server | undefined> {
  return new Promise((resolve) => {
    const other = createServer()
    other.once('error', () => resolve(undefined))
    other.listen(port, '127.0.0.1', () => resolve(other))
  })
}
