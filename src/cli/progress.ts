import { Presets, SingleBar } from 'cli-progress'

/** Shows how far the work is, on standard error, when it takes more than a moment and a person is watching. */
export interface Progress {
  readonly onProgress: (done: number, total: number, says: string) => void
  stop(): void
}

const PATIENCE_MS = 1000

export function progressOn(stream: NodeJS.WriteStream): Progress {
  if (stream.isTTY !== true) return { onProgress: () => undefined, stop: () => undefined }
  const started = Date.now()
  let bar: SingleBar | undefined
  return {
    onProgress(done, total, says) {
      if (bar === undefined && Date.now() - started < PATIENCE_MS) return
      if (bar === undefined) {
        bar = new SingleBar(
          { format: '{says} [{bar}] {value} of {total}', stream, clearOnComplete: true, hideCursor: true, barsize: 24 },
          Presets.legacy,
        )
        bar.start(total, done, { says })
      }
      bar.setTotal(total)
      bar.update(done, { says: says.slice(0, 30) })
    },
    stop() {
      bar?.stop()
    },
  }
}
