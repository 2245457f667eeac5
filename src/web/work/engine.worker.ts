import { worker, workerEmit } from 'workerpool'
import { tasks } from './tasks.ts'

/** The engine's own thread: it answers one question at a time, and is ended when the answer is no longer wanted. */
worker(tasks(workerEmit) as unknown as Parameters<typeof worker>[0])
