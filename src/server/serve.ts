import { networkInterfaces } from 'node:os'
import { fileURLToPath } from 'node:url'
import type { FastifyInstance } from 'fastify'
import { pageServer } from './page-server.ts'

export { PageNotBuilt } from './page-server.ts'

/** Where the page usually is. A browser keeps pieces by address, so it is worth staying there. */
export const USUAL_PORT = 4615
/** This machine and no other. */
const LOOPBACK = '127.0.0.1'

export interface ServeOptions {
  /** Left out: the usual one, or a free one where that is taken. 0: any free one. */
  readonly port?: number
  /** Left out: only this machine can open the page. */
  readonly host?: string
  /** Folder of the built page. */
  readonly page?: string
}

/** The page as it is handed out. */
export interface Served {
  /** To open in a browser on this machine, as `http://127.0.0.1:4615`. */
  readonly address: string
  /** To open from other machines; empty while only this one can. */
  readonly elsewhere: readonly string[]
  /** True when the usual port was taken and another had to do. */
  readonly moved: boolean
  readonly close: () => Promise<void>
}

/** The port or host that was asked for cannot be used. */
export class CannotListen extends Error {
  override readonly name = 'CannotListen'
}

/** Built beside this file's own folder, in source and in the build. */
const PAGE = fileURLToPath(new URL('../../dist/web', import.meta.url))

/**
 * Hands out the page until `close`. Throws `PageNotBuilt` when there is none, and `CannotListen` when a port that was asked for is
 * taken or the host is not one of this machine.
 */
export async function serve({ port, host = LOOPBACK, page = PAGE }: ServeOptions = {}): Promise<Served> {
  const server = await pageServer(page)
  const moved = await listen(server, port, host)
  const used = portOf(server)
  const everywhere = host === '0.0.0.0' || host === '::'
  const named = host.includes(':') ? `[${host}]` : host
  return {
    address: `http://${everywhere ? LOOPBACK : named}:${used}`,
    elsewhere: everywhere ? ownAddresses().map((each) => `http://${each}:${used}`) : [],
    moved,
    close: () => server.close(),
  }
}

/** Starts listening; true when the usual port was taken and a free one serves instead. */
async function listen(server: FastifyInstance, port: number | undefined, host: string): Promise<boolean> {
  try {
    await server.listen({ port: port ?? USUAL_PORT, host })
    return false
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined
    if (code === 'EADDRINUSE' && port === undefined) {
      await server.listen({ port: 0, host })
      return true
    }
    await server.close()
    if (code === 'EADDRINUSE')
      throw new CannotListen(`--port ${port}: taken by another program; give another, or leave it out for a free one`)
    if (code === 'EACCES')
      throw new CannotListen(`--port ${port ?? USUAL_PORT}: this machine does not let you use it; one above 1023 will do`)
    if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
      throw new CannotListen(`--host ${host}: not an address of this machine; leave it out, or 0.0.0.0 for every one it has`)
    throw error
  }
}

function portOf(server: FastifyInstance): number {
  const at = server.server.address()
  if (at === null || typeof at === 'string') throw new Error('the server listens at no port')
  return at.port
}

function ownAddresses(): readonly string[] {
  return Object.values(networkInterfaces())
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)
}
