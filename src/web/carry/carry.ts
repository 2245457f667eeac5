import { type ReadonlySignal, signal } from '@preact/signals'
import type { Problem } from '#contract/problems.ts'
import type { Bench } from '#web/bench/bench.ts'

/** What came of carrying something in or out, to be told until it is read. */
export interface Told {
  readonly says: string
  /** What was at fault in it: where, and the mend. */
  readonly problems?: readonly Problem[]
  /** What to do, or what it means. */
  readonly mend?: string
  /** A link that could not be put on the clipboard, to be copied by hand. */
  readonly link?: string
  /** It went wrong: read out at once. */
  readonly loud?: boolean
}

/** Pieces carried onto the bench and off it: as job files and as links. */
export interface Carry {
  readonly told: ReadonlySignal<Told | undefined>
  /** Read, or no longer true. */
  heard(): void
  /** Puts each file on the bench as a new piece; gives the id of the last one. The piece in hand stays as it is. */
  openFiles(files: readonly File[]): Promise<string | undefined>
  /** Puts the plan that an address holds on the bench; gives its id. */
  openAddress(address: string): Promise<string | undefined>
  /** Hands the open piece to the browser as a job file. */
  saveFile(): Promise<void>
  /** Puts a link that holds the open piece on the clipboard. */
  copyLink(): Promise<void>
}

const carries = new WeakMap<Bench, Carry>()

/** One for each bench. */
export function carryOf(bench: Bench): Carry {
  const known = carries.get(bench)
  if (known !== undefined) return known
  const made = newCarry(bench)
  carries.set(bench, made)
  return made
}

function newCarry(bench: Bench): Carry {
  const told = signal<Told | undefined>()
  /** Does it and tells what came of it; a fault of the program is told too, and goes to the console. */
  async function telling<Done>(
    goal: string,
    does: () => Promise<{ readonly told: Told | undefined; readonly done?: Done }>,
  ): Promise<Done | undefined> {
    try {
      const { told: now, done } = await does()
      told.value = now
      return done
    } catch (error) {
      console.error(error)
      told.value = {
        says: `${goal} did not come off.`,
        mend: 'The fault is the program\u2019s; nothing on the bench was changed. Try it once more.',
        loud: true,
      }
      return undefined
    }
  }
  return {
    told,
    heard: () => {
      told.value = undefined
    },
    openFiles: (files) =>
      telling('Opening the file', async () => {
        const { filesOpened } = await import('./carried-in.ts')
        return filesOpened(bench, files)
      }),
    openAddress: (address) =>
      telling('Opening the link', async () => {
        const { linkOpened } = await import('./carried-in.ts')
        return linkOpened(bench, address)
      }),
    saveFile: () =>
      telling('Saving the file', async () => {
        const { fileSaved } = await import('./carried-out.ts')
        return { told: await fileSaved(bench) }
      }),
    copyLink: () =>
      telling('Making the link', async () => {
        const { linkCopied } = await import('./carried-out.ts')
        return { told: await linkCopied(bench) }
      }),
  }
}
