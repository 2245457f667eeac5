/** What can be undone: whole documents, which share what did not change. */
export interface History<Document> {
  readonly past: readonly Entry<Document>[]
  readonly now: Document
  readonly future: readonly Entry<Document>[]
}

interface Entry<Document> {
  readonly document: Document
  /** What the change was, for "Undo: ...". */
  readonly says: string
  /** Changes in a row with the same key are one step: a drag, or typing in one field. */
  readonly merge?: string
}

/** Steps kept; older ones go. */
const DEPTH = 500

export function begun<Document>(now: Document): History<Document> {
  return { past: [], now, future: [] }
}

/** The history after a change; a document that is the same object changes nothing, and a drag that ends where it began has not been. */
export function changed<Document>(
  history: History<Document>,
  document: Document,
  says: string,
  merge?: string,
): History<Document> {
  if (document === history.now) return history
  const last = history.past.at(-1)
  const joins = merge !== undefined && last?.merge === merge && history.future.length === 0
  if (joins && last.document === document) return { past: history.past.slice(0, -1), now: document, future: [] }
  const past = joins
    ? history.past
    : [...history.past, { document: history.now, says, ...(merge === undefined ? {} : { merge }) }].slice(-DEPTH)
  return { past, now: document, future: [] }
}

export function undone<Document>(history: History<Document>): History<Document> {
  const last = history.past.at(-1)
  if (last === undefined) return history
  return {
    past: history.past.slice(0, -1),
    now: last.document,
    future: [{ document: history.now, says: last.says }, ...history.future],
  }
}

export function redone<Document>(history: History<Document>): History<Document> {
  const [next, ...future] = history.future
  if (next === undefined) return history
  return { past: [...history.past, { document: history.now, says: next.says }], now: next.document, future }
}

/** A drag ends: the next change with the same key is a step of its own. */
export function settled<Document>(history: History<Document>): History<Document> {
  const last = history.past.at(-1)
  if (last?.merge === undefined) return history
  return { ...history, past: [...history.past.slice(0, -1), { document: last.document, says: last.says }] }
}
