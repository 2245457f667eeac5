import { existsSync } from 'node:fs'
import { join } from 'node:path'
import helmet from '@fastify/helmet'
import files from '@fastify/static'
import Fastify, { type FastifyInstance } from 'fastify'

/** The page has not been built yet, so there is nothing to hand out. */
export class PageNotBuilt extends Error {
  override readonly name = 'PageNotBuilt'
}

/** The page's own places: any of them may be opened, kept as a bookmark or loaded anew, and all of them are index.html. */
const PLACES = /^\/(?:|bench|rack|shop|proof|piece\/[\w-]+(?:\/[a-z]+)?)\/?$/u

/** Names with a hash of their content: what stands under such a name never changes. */
const HASHED = /[\\/]assets[\\/][^\\/]+$/u

/**
 * Hands out the built page from `folder`, each file as compressed by the build where the browser takes that, and nothing else. The
 * content policy lets the page load from here only; what it computes it computes itself, so no address takes anything in.
 * Throws `PageNotBuilt` when the folder holds no page.
 */
export async function pageServer(folder: string): Promise<FastifyInstance> {
  if (!existsSync(join(folder, 'index.html')))
    throw new PageNotBuilt('the page is not built yet; "npm run build" makes it, and "npm start" does so by itself')
  const server = Fastify({ forceCloseConnections: true, routerOptions: { ignoreTrailingSlash: true } })
  await server.register(helmet, {
    // No upgrade to TLS is asked for: this machine serves without, and there is nothing to upgrade to.
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        // The curves set their own sizes.
        styleSrc: ["'self'", "'unsafe-inline'"],
        workerSrc: ["'self'"],
        objectSrc: ["'none'"],
        baseUri: ["'self'"],
        frameAncestors: ["'none'"],
        formAction: ["'none'"],
      },
    },
    strictTransportSecurity: false,
  })
  await server.register(files, {
    root: folder,
    preCompressed: true,
    cacheControl: false,
    setHeaders: (reply, path) => {
      // Anything else is asked for anew each time, so that a newer build is found.
      reply.header('cache-control', HASHED.test(path) ? 'public, max-age=31536000, immutable' : 'no-cache')
    },
  })
  server.setNotFoundHandler((request, reply) => {
    const path = request.url.split(/[?#]/u, 1)[0] ?? ''
    if ((request.method === 'GET' || request.method === 'HEAD') && PLACES.test(path)) return reply.sendFile('index.html')
    return reply.code(404).type('text/plain; charset=utf-8').send('Nothing stands at this address.\n')
  })
  return server
}
