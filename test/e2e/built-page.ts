import { join } from 'node:path'
import { pageBuilt } from '../../scripts/page-build.mjs'

/** The page as `npm start` hands it out. */
export const PAGE = join(import.meta.dirname, '..', '..', 'dist', 'web')

/** Before the tests of the page: it is built, unless it stands as its sources would have it. */
export default function setup(): void {
  if (!pageBuilt((words) => console.error(words))) throw new Error('the page could not be built; the lines above say where')
}
