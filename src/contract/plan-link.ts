import { canUnpack, packed, TooMuchInside, unpacked } from './link-packing.ts'
import { PRIMER_1 } from './link-primer.ts'
import { InputProblems } from './problems.ts'

declare const TextEncoder: new () => { encode(text: string): Uint8Array }
declare const TextDecoder: new (label: 'utf-8', options: { fatal: true }) => { decode(bytes: Uint8Array): string }

/** The form of link that is made here, and the newest that is read. */
const FORM = 1
/** A job is a page of text; what unpacks to more is no job. */
const MOST_BYTES = 200_000
const CHECK_BYTES = 3

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text)

/**
 * A link that holds a whole job, in the part of an address behind `#`, which a browser keeps to itself and no server sees:
 * `BASE#plan=1.PAYLOAD`, where 1 is the form, and the payload is base64url of three bytes that check the rest, then the job as compact
 * JSON, deflated with `PRIMER_1` as if it stood before it. A shop by file name must stand in the job itself by now.
 * Throws `InputProblems` when the job has no JSON or more than 200 kB of it.
 */
export async function planLink(baseUrl: string, job: unknown): Promise<string> {
  const json: string | undefined = JSON.stringify(job)
  if (json === undefined) throw fault('there is no job to put into a link')
  const bytes = utf8(json)
  if (bytes.length > MOST_BYTES)
    throw fault(
      `a job of ${kilobytes(bytes.length)} is too large for a link (at most ${kilobytes(MOST_BYTES)}); save it as a file`,
    )
  const block = packed(bytes, utf8(PRIMER_1))
  const payload = new Uint8Array(CHECK_BYTES + block.length)
  payload.set(checkOf(bytes))
  payload.set(block, CHECK_BYTES)
  return `${baseUrl.replace(/#.*$/su, '')}#plan=${FORM}.${base64Url(payload)}`
}

/** Whether an address, or the part of it behind `#`, says that it holds a plan. */
export function holdsPlan(address: string): boolean {
  return PLAN.test(tidied(address))
}

/**
 * The job in a link, as `planLink` was given it; `parseJob` says whether it is a sound one. Takes the whole address or only the part
 * behind `#`. Throws `InputProblems` that name the mend when the link is foreign, newer, cut short, changed, or too large.
 */
export async function jobFromLink(address: string): Promise<unknown> {
  const [, form = '', payload = '', rest = ''] = PLAN.exec(tidied(address)) ?? []
  if (form === '') throw fault('no plan is in this address: "#plan=" is missing; copy the whole link, to its very end')
  if (Number(form) > FORM)
    throw fault(
      `made by a newer Quenchwright (form ${form.slice(0, 6)}; this one reads ${FORM}); bring this one up to date, or have the job sent as a file`,
    )
  if (!canUnpack()) throw fault('this browser is too old to open a link; bring it up to date, or open the job as a file')
  if (Number(form) < 1 || (rest !== '' && !rest.startsWith('&'))) throw damaged()
  if (payload.length > 2 * MOST_BYTES) throw tooLarge()
  const bytes = bytesOf(payload)
  if (bytes === undefined || bytes.length <= CHECK_BYTES) throw damaged()
  let inside: Uint8Array
  try {
    inside = await unpacked(bytes.subarray(CHECK_BYTES), utf8(PRIMER_1), MOST_BYTES)
  } catch (error) {
    throw error instanceof TooMuchInside ? tooLarge() : damaged()
  }
  if (checkOf(inside).some((byte, i) => byte !== bytes[i])) throw damaged()
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(inside))
  } catch {
    throw damaged()
  }
}

const PLAN = /(?:^|[#&])plan=(\d+)\.([\w-]*)(.*)$/su

/** Without the blanks and line breaks that a letter puts into a long address. */
function tidied(address: string): string {
  return address.replace(/\s+/gu, '').replace(/%3d/giu, '=')
}

function fault(says: string): InputProblems {
  return new InputProblems([{ field: 'link', says }])
}

function damaged(): InputProblems {
  return fault('cut short or changed on its way; copy all of it once more, or have the job sent as a file')
}

function tooLarge(): InputProblems {
  return fault(`unpacks to more than ${kilobytes(MOST_BYTES)}, which no job does; have the job sent as a file`)
}

function kilobytes(bytes: number): string {
  return `${Math.ceil(bytes / 1000)} kB`
}

/** FNV-1a of 32 bits folded to 24: tells a slip of the pen or of a camera, not a forger. */
function checkOf(bytes: Uint8Array): Uint8Array {
  let hash = 0x811c9dc5
  for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193)
  const folded = (hash ^ (hash >>> 24)) & 0xffffff
  return Uint8Array.of(folded >> 16, (folded >> 8) & 255, folded & 255)
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'

function base64Url(bytes: Uint8Array): string {
  let text = ''
  for (let i = 0; i < bytes.length; i += 3) {
    const [a = 0, b = 0, c = 0] = bytes.subarray(i, i + 3)
    const four = [a >> 2, ((a & 3) << 4) | (b >> 4), ((b & 15) << 2) | (c >> 6), c & 63]
    text += four
      .slice(0, Math.min(bytes.length - i, 3) + 1)
      .map((six) => LETTERS[six])
      .join('')
  }
  return text
}

/** Undefined where the text is no base64url. */
function bytesOf(text: string): Uint8Array | undefined {
  if (text.length % 4 === 1) return undefined
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4))
  let waiting = 0
  let bits = 0
  let at = 0
  for (const letter of text) {
    const six = LETTERS.indexOf(letter)
    if (six < 0) return undefined
    waiting = ((waiting << 6) | six) & 0xfff
    bits += 6
    if (bits < 8) continue
    bits -= 8
    bytes[at++] = (waiting >> bits) & 255
  }
  return bytes
}
