/**
 * Vite: all that an entry imports outright goes into one file, the entry's. Left to itself the bundler cuts out what a later part also
 * uses, and a dozen small files compress worse than the one and have to be waited for one by one.
 */
export function firstPart(name) {
  const outright = new Set()
  return {
    name: 'first-part',
    apply: 'build',
    outputOptions(options) {
      return { ...options, codeSplitting: { groups: [{ name, test: (id) => outright.has(id) }] } }
    },
    buildEnd() {
      const waiting = [...this.getModuleIds()].filter((id) => this.getModuleInfo(id)?.isEntry)
      for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
        if (outright.has(id)) continue
        outright.add(id)
        waiting.push(...(this.getModuleInfo(id)?.importedIds ?? []))
      }
    },
  }
}
