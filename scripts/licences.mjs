import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Vite: the licences of everything that the page carries, in one file beside it, since the scripts themselves have their comments
 * taken out. `also` names packages that no script comes from, as a font. Give the same plugin's `thread` to the workers.
 */
export function licences(fileName, also) {
  const folders = new Set(also.map((name) => join('node_modules', name)))
  const collect = (_options, bundle) => {
    for (const chunk of Object.values(bundle))
      for (const id of chunk.type === 'chunk' ? Object.keys(chunk.modules) : []) {
        const [, folder] = /^\0?(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/u.exec(id) ?? []
        if (folder !== undefined) folders.add(folder)
      }
  }
  return {
    thread: { name: 'licences-of-thread', apply: 'build', generateBundle: collect },
    page: {
      name: 'licences',
      apply: 'build',
      generateBundle(options, bundle) {
        collect(options, bundle)
        // Packages of one hand share one text: said once, under all their names.
        const heads = new Map()
        for (const folder of folders) {
          const [head, text] = described(folder)
          heads.set(text, [...(heads.get(text) ?? []), head])
        }
        const source = [...heads]
          .map(([text, names]) => `${names.toSorted().join('\n')}\n\n${text}`)
          .toSorted()
          .join(`\n\n\n${'-'.repeat(78)}\n`)
        this.emitFile({ type: 'asset', fileName, source: `${source}\n` })
      },
    },
  }
}

/** Name, version and licence of a package, and the licence's text. */
function described(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  const file = readdirSync(folder).find((each) => /^licen[cs]e/iu.test(each))
  if (license === undefined && file === undefined) throw new Error(`${folder}: no licence is named there`)
  const notice = join(folder, 'NOTICE')
  const texts = [...(file === undefined ? [] : [join(folder, file)]), ...(existsSync(notice) ? [notice] : [])]
  return [`${name} ${version} (${license})`, texts.map((each) => readFileSync(each, 'utf8').trim()).join('\n\n')]
}
