import { createServer, type Server } from 'node:net'
import { describe, expect, test } from 'vitest'
import { USUAL_PORT } from '#server/serve.ts'
import { startServer } from './served.ts'

describe('quenchwright serve, as a person starts it', () => {
  test.each(['SIGINT', 'SIGTERM'] as const)('says its address, serves, and ends cleanly on %s', async (signal) => {
    const server = await startServer('--port', '0')
    expect(server.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/u)
    const reply = await fetch(`${server.address}/piece/any/shape`)
    expect(reply.status).toBe(200)
    expect(await reply.text()).toContain('<title>Quenchwright</title>')
    expect(await server.end(signal)).toBe(0)
    expect(server.said()).toContain('Ended.')
  })

  test('the usual port taken: it says so, and what that means for the pieces', async () => {
    const other = await occupied(USUAL_PORT)
    const server = await startServer('--host', '127.0.0.1')
    expect(server.address).not.toContain(`:${USUAL_PORT}`)
    expect(server.said().replace(/\s+/gu, ' ')).toContain(`The usual port ${USUAL_PORT} is taken`)
    expect((await fetch(server.address)).status).toBe(200)
    expect(await server.end()).toBe(0)
    other?.close()
  })

  test('a taken port that was asked for ends it with the mend', async () => {
    const first = await startServer('--port', '0')
    const port = new URL(first.address).port
    await expect(startServer('--port', port)).rejects.toThrow(/taken by another program; give another/u)
    expect(await first.end()).toBe(0)
  })
})

function occupied(port: number): Promise<Server | undefined> {
  return new Promise((resolve) => {
    const other = createServer()
    other.once('error', () => resolve(undefined))
    other.listen(port, '127.0.0.1', () => resolve(other))
  })
}
