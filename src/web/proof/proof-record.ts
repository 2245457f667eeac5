import type { MemoryTable } from '#report/memory-list.ts'
import type { ValidationRecord } from '#report/validation-record.ts'
// Copies that `npm run validate` makes of docs/validation.json and docs/from-memory.md; as text, since reading JSON is quicker than code.
import memoryText from './memory.json?raw'
import recordText from './record.json?raw'

export const RECORD = JSON.parse(recordText) as ValidationRecord
export const MEMORY = JSON.parse(memoryText) as readonly MemoryTable[]
