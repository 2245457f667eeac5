/** Where something stands in a job document: keys of groups, places in lists from 0. `['process', 2, 'depth']`. */
export type JobPath = readonly (string | number)[]

/**
 * One change of a job document. With `insert` a list gains an item before that place (at its length: at the end); else what stands at
 * `path` becomes `value`, and without a value it goes: a key from its group, an item from its list.
 */
export interface JobEdit {
  readonly path: JobPath
  readonly value?: unknown
  readonly insert?: unknown
}

/** A path that the document has no place for. */
export class NoSuchPlace extends Error {
  constructor(path: JobPath, why: string) {
    super(`${path.join('.')}: ${why}`)
    this.name = 'NoSuchPlace'
  }
}

/**
 * The document after these changes, each in the document that the one before it left. The given document is never changed; what no
 * path touches is shared with it, and a change that changes nothing gives the same document. Groups and lists on the way that are not
 * there yet are made. Throws `NoSuchPlace` when a path leads through a plain value or beyond a list.
 */
export function applyEdits(job: unknown, edits: readonly JobEdit[]): unknown {
  return edits.reduce((document, edit) => changed(document, edit.path, edit), job)
}

type Group = Readonly<Record<string, unknown>>

function changed(holder: unknown, rest: JobPath, edit: JobEdit): unknown {
  const [key, ...inner] = rest
  if (key === undefined) {
    if (edit.insert !== undefined) throw new NoSuchPlace(edit.path, 'only a list takes something in between')
    return edit.value
  }
  if (typeof key === 'number') return changedList(holder ?? [], key, inner, edit)
  return changedGroup(holder ?? {}, key, inner, edit)
}

function changedList(holder: unknown, place: number, inner: JobPath, edit: JobEdit): unknown {
  if (!Array.isArray(holder)) throw new NoSuchPlace(edit.path, 'no list stands there')
  const list: readonly unknown[] = holder
  const inserts = inner.length === 0 && edit.insert !== undefined
  if (!Number.isInteger(place) || place < 0 || place > list.length - (inserts ? 0 : 1))
    throw new NoSuchPlace(edit.path, `the list has ${list.length} items`)
  if (inserts) return list.toSpliced(place, 0, edit.insert)
  if (inner.length === 0 && edit.value === undefined) return list.toSpliced(place, 1)
  const after = changed(list[place], inner, edit)
  return Object.is(after, list[place]) ? list : list.with(place, after)
}

function changedGroup(holder: unknown, key: string, inner: JobPath, edit: JobEdit): unknown {
  if (typeof holder !== 'object' || holder === null || Array.isArray(holder))
    throw new NoSuchPlace(edit.path, 'no group of fields stands there')
  const group = holder as Group
  const before = Object.hasOwn(group, key) ? group[key] : undefined
  const after = changed(before, inner, edit)
  if (Object.is(after, before)) return group
  if (after !== undefined) return { ...group, [key]: after }
  return Object.fromEntries(Object.entries(group).filter(([each]) => each !== key))
}
