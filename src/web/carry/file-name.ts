/** The name of a job file for a piece: `hot slot punch` is `hot-slot-punch.yaml`. Every system takes it. */
export function fileNameOf(piece: string | undefined): string {
  const words = (piece ?? '')
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .slice(0, 80)
    .replace(/-+$/u, '')
  return `${words === '' || RESERVED.test(words) ? `piece${words === '' ? '' : `-${words}`}` : words}.yaml`
}

/** Names that one system keeps for its own devices. */
const RESERVED = /^(?:con|prn|aux|nul|com\d|lpt\d)$/u
