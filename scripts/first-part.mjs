/**
 * Vite: all that an entry imports outright goes into one file, the entry's. Left to itself the bundler cuts out what a later part also
 * uses, and a dozen small files compress worse than the one and have to be waited for one by one. `next` names modules, by the end of
 * their path, that are asked for right after: what each imports outright beyond the first part is one file too.
 */
export function firstPart(name, next = {}) {
  const parts = new Map([[name, new Set()], ...Object.keys(next).map((each) => [each, new Set()])])
  return {
    name: 'first-part',
    apply: 'build',
    outputOptions(options) {
      const groups = [...parts].map(([each, modules], i) => ({
        name: each,
        priority: parts.size - i,
        test: (id) => modules.has(id),
      }))
      return { ...options, codeSplitting: { groups } }
    },
    buildEnd() {
      const ids = [...this.getModuleIds()]
      const outright = (from, into, already = () => false) => {
        const waiting = [...from]
        for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
          if (into.has(id) || already(id)) continue
          into.add(id)
          waiting.push(...(this.getModuleInfo(id)?.importedIds ?? []))
        }
      }
      const first = parts.get(name)
      outright(
        ids.filter((id) => this.getModuleInfo(id)?.isEntry),
        first,
      )
      for (const [each, end] of Object.entries(next))
        outright(
          ids.filter((id) => id.replaceAll('\\', '/').endsWith(end)),
          parts.get(each),
          (id) => first.has(id),
        )
    },
  }
}
