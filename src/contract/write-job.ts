import { Document, isCollection, isMap, isSeq, visit } from 'yaml'
import { jobSchema } from './job-schema.ts'

const LINE = 130

/**
 * A job document as the text of a job file, as a smith would write it: the fields in their usual order, a section, a zone or a step to
 * a line. `readJobText` gives the same document back. Fields that the contract does not know stand last, as they came.
 */
export function jobFileText(job: object): string {
  const known = Object.keys(jobSchema.shape).filter((key) => Object.hasOwn(job, key))
  const keys = [...known, ...Object.keys(job).filter((key) => !known.includes(key))]
  const held = Object.fromEntries(keys.map((key) => [key, (job as Record<string, unknown>)[key]]))
  const document = new Document(held, { version: '1.2', schema: 'core', aliasDuplicateObjects: false, keepUndefined: false })
  // Lists stand line by line, what is in them on one line each; so does a group of plain values.
  visit(document, {
    Collection(_, node, path) {
      const within = path.filter(isCollection)
      const inList = within.some(isSeq)
      const plain = isMap(node) && within.length > 0 && node.items.every(({ value }) => !isCollection(value))
      if (inList || plain) node.flow = true
    },
  })
  return document.toString({ lineWidth: LINE, flowCollectionPadding: true })
}
