import { type ChildProcess, spawn } from 'node:child_process'
import { join } from 'node:path'

const ROOT = join(import.meta.dirname, '..', '..')

export interface Running {
  readonly address: string
  /** Everything that it has printed. */
  readonly said: () => string
  /** Asks it to end, as Ctrl-C does, and gives its exit code. */
  readonly end: (signal?: NodeJS.Signals) => Promise<number | null>
}

/** `quenchwright serve` as a person starts it, at a free port unless told otherwise. */
export async function startServer(...words: readonly string[]): Promise<Running> {
  const server = spawn(
    process.execPath,
    ['--conditions=source', '--import', 'tsx', 'src/cli/main.ts', 'serve', ...(words.length > 0 ? words : ['--port', '0'])],
    { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, NO_COLOR: '1' } },
  )
  const ended = new Promise<number | null>((resolve) => server.once('close', (code) => resolve(code)))
  let said = ''
  for (const stream of [server.stdout, server.stderr])
    stream?.on('data', (chunk) => {
      said += chunk
    })
  const address = await addressOf(server, ended, () => said)
  return {
    address,
    said: () => said,
    end: (signal = 'SIGINT') => {
      server.kill(signal)
      return ended
    },
  }
}

async function addressOf(server: ChildProcess, ended: Promise<number | null>, said: () => string): Promise<string> {
  let over = false
  void ended.then(() => {
    over = true
  })
  for (let waitedMs = 0; waitedMs < 30_000 && !over; waitedMs += 50) {
    const [address] = /http:\/\/\S+/u.exec(said()) ?? []
    if (address !== undefined && said().includes('\n')) return address
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  server.kill('SIGKILL')
  throw new Error(`the server gave no address: ${said()}`)
}
