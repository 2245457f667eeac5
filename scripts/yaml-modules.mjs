import { parse } from 'yaml'

/** Vite: a YAML file imported as the value that it holds, so that the example pieces of the page are the files in examples/. */
export const yamlModules = {
  name: 'yaml-modules',
  transform(text, id) {
    if (!id.endsWith('.yaml')) return undefined
    return { code: `export default ${JSON.stringify(parse(text))}`, map: null, moduleType: 'js' }
  },
}
