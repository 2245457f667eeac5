import { describe, expect, test, vi } from 'vitest'
import type { Forecast } from '#contract/answers.ts'
import type { Picture } from '#contract/picture-fields.ts'
import type { JobText } from '#web/job/job-text.ts'
import { type Asked, type Crew, Dropped, WorkerLost } from './crew.ts'
import { desk } from './desk.ts'
import type { ForecastQuestion, ForecastReply, Progress } from './messages.ts'

interface Call {
  readonly question: ForecastQuestion
  readonly onProgress: ((progress: Progress) => void) | undefined
  readonly give: (reply: ForecastReply) => void
  readonly break: (error: Error) => void
  dropped: boolean
}

/** A crew that answers when the test says so. */
function fakeCrew(): { crew: Crew; calls: Call[] } {
  const calls: Call[] = []
  const crew: Crew = {
    ask(_, questions, options) {
      let give: Call['give'] = () => undefined
      let fail: Call['break'] = () => undefined
      const answer = new Promise((resolve, reject) => {
        give = resolve
        fail = reject
      })
      answer.catch(() => undefined)
      const call: Call = {
        question: questions[0] as ForecastQuestion,
        onProgress: options?.onProgress,
        give,
        break: fail,
        dropped: false,
      }
      calls.push(call)
      return {
        answer,
        drop: () => {
          call.dropped = true
          fail(new Dropped('forecast'))
        },
      } as Asked<never>
    },
  }
  return { crew, calls }
}

const forecast = {} as Forecast
const picture = {} as Picture
const answer: ForecastReply = { kind: 'answer', forecast, picture }
const job = (piece: string): JobText => ({ piece })
/** Lets what was promised happen. */
const settle = async (): Promise<void> => {
  for (let i = 0; i < 10; i++) await Promise.resolve()
}

function bench(restMs = 5) {
  vi.useFakeTimers()
  const quick = fakeCrew()
  const thorough = fakeCrew()
  const made = desk(quick.crew, thorough.crew, restMs)
  const rest = async (): Promise<void> => {
    vi.advanceTimersByTime(restMs)
    await settle()
  }
  return { ...made, sketches: quick.calls, fulls: thorough.calls, rest }
}

describe('sketches', () => {
  test('while one is worked out only the newest question waits', async () => {
    const { ask, sketches, answered } = bench()
    for (const name of ['a', 'b', 'c', 'd']) ask(job(name), 'metric')
    expect(sketches.map(({ question }) => question.job.piece)).toEqual(['a'])
    sketches[0]?.give(answer)
    await settle()
    expect(sketches.map(({ question }) => question.job.piece)).toEqual(['a', 'd'])
    // The sketch of what has moved on shows all the same where the drag is going.
    expect(answered.value?.job.piece).toBe('a')
    sketches[1]?.give(answer)
    await settle()
    expect(answered.value).toMatchObject({ job: { piece: 'd' }, fineness: 'sketch' })
  })

  test('a fault is told, and nothing more is worked out', async () => {
    const { ask, sketches, fulls, problems, stale, rest } = bench()
    ask(job('a'), 'metric')
    await rest()
    sketches[0]?.give({ kind: 'problems', problems: [{ field: 'profile[0].across', says: 'write a length' }] })
    await settle()
    await rest()
    expect(problems.value).toHaveLength(1)
    expect(stale.value).toBe(true)
    expect(fulls).toHaveLength(0)
  })

  test('without a treatment there is no answer, and none of another', async () => {
    const { ask, sketches, answered, untreated, rest } = bench()
    ask(job('a'), 'metric')
    sketches[0]?.give(answer)
    await settle()
    ask(job('b'), 'metric')
    sketches[1]?.give({ kind: 'no-process', assumptions: [] })
    await settle()
    await rest()
    expect(untreated.value).toBe(true)
    expect(answered.value).toBeUndefined()
  })

  test('a thread lost over a sketch is replaced without a word; lost again it is told', async () => {
    const said = vi.spyOn(console, 'error').mockImplementation(() => undefined)
    const { ask, sketches, failed, answered } = bench(1e6)
    ask(job('a'), 'metric')
    sketches[0]?.break(new WorkerLost('forecast'))
    await settle()
    expect(failed.value).toBeUndefined()
    sketches[1]?.break(new WorkerLost('forecast'))
    await settle()
    expect(failed.value?.says).toMatch(/ended. Your drawing is kept/u)
    failed.value?.retry()
    expect(failed.value).toBeUndefined()
    sketches[2]?.give(answer)
    await settle()
    expect(answered.value?.job.piece).toBe('a')
    said.mockRestore()
  })
})

describe('the full answer', () => {
  test('begins once the hand rests and the sketch is there', async () => {
    const { ask, sketches, fulls, rest, stale, answered, progress } = bench()
    ask(job('a'), 'metric')
    await rest()
    expect(fulls).toHaveLength(0)
    sketches[0]?.give(answer)
    await settle()
    expect(fulls).toHaveLength(1)
    fulls[0]?.onProgress?.({ done: 1, total: 4, says: 'heat' })
    expect(progress.value).toMatchObject({ done: 1, total: 4 })
    expect(stale.value).toBe(true)
    fulls[0]?.give(answer)
    await settle()
    expect(stale.value).toBe(false)
    expect(progress.value).toBeUndefined()
    expect(answered.value?.fineness).toBe('normal')
  })

  test('is dropped at once when the job changes, and its late word counts for nothing', async () => {
    const { ask, sketches, fulls, rest, answered, progress } = bench()
    ask(job('a'), 'metric')
    sketches[0]?.give(answer)
    await settle()
    await rest()
    ask(job('b'), 'metric')
    expect(fulls[0]?.dropped).toBe(true)
    fulls[0]?.onProgress?.({ done: 3, total: 4, says: 'temper' })
    expect(progress.value).toBeUndefined()
    sketches[1]?.give(answer)
    await settle()
    expect(answered.value).toMatchObject({ job: { piece: 'b' }, fineness: 'sketch' })
  })

  test('a hand that only pauses does not begin it', async () => {
    const { ask, sketches, fulls } = bench(300)
    for (const name of ['a', 'b', 'c']) {
      ask(job(name), 'metric')
      sketches.at(-1)?.give(answer)
      await settle()
      vi.advanceTimersByTime(200)
      await settle()
    }
    expect(fulls).toHaveLength(0)
    vi.advanceTimersByTime(100)
    await settle()
    expect(fulls.map(({ question }) => question.job.piece)).toEqual(['c'])
  })

  test('its sketch, when it comes later, does not replace it', async () => {
    const { ask, sketches, fulls, rest, answered } = bench()
    ask(job('a'), 'metric')
    sketches[0]?.give(answer)
    await settle()
    await rest()
    fulls[0]?.give(answer)
    await settle()
    ask(job('b'), 'metric')
    ask(job('a'), 'metric')
    expect(answered.value).toMatchObject({ job: { piece: 'a' }, fineness: 'normal' })
    sketches[1]?.give(answer)
    await settle()
    expect(answered.value).toMatchObject({ job: { piece: 'a' }, fineness: 'normal' })
  })

  test('what was worked out before is there at once, with nothing asked', async () => {
    const { ask, sketches, fulls, rest, answered, stale } = bench()
    ask(job('a'), 'metric')
    sketches[0]?.give(answer)
    await settle()
    await rest()
    fulls[0]?.give(answer)
    await settle()
    ask(job('b'), 'metric')
    sketches[1]?.give(answer)
    await settle()
    const again = job('a')
    ask(again, 'metric')
    await rest()
    expect(answered.value?.job).toBe(again)
    expect(stale.value).toBe(false)
    expect([sketches.length, fulls.length]).toEqual([2, 1])
    ask(again, 'inch')
    expect(stale.value).toBe(true)
  })

  test('a lost thread is told with a way to try again', async () => {
    const said = vi.spyOn(console, 'error').mockImplementation(() => undefined)
    const { ask, sketches, fulls, rest, failed, answered, stale } = bench()
    ask(job('a'), 'metric')
    sketches[0]?.give(answer)
    await settle()
    await rest()
    fulls[0]?.break(new WorkerLost('forecast'))
    await settle()
    expect(failed.value?.says).toMatch(/Your drawing is kept/u)
    expect(answered.value?.fineness).toBe('sketch')
    failed.value?.retry()
    sketches[1]?.give(answer)
    await settle()
    await rest()
    fulls[1]?.give(answer)
    await settle()
    expect(failed.value).toBeUndefined()
    expect(stale.value).toBe(false)
    said.mockRestore()
  })

  test('can be stopped by hand, and gone on with', async () => {
    const { ask, sketches, fulls, rest, halt, resume, halted, progress, failed, stale } = bench()
    ask(job('a'), 'metric')
    sketches[0]?.give(answer)
    await settle()
    await rest()
    halt()
    await settle()
    expect(fulls[0]?.dropped).toBe(true)
    expect(halted.value).toBe(true)
    expect(progress.value).toBeUndefined()
    expect(failed.value).toBeUndefined()
    resume()
    fulls[1]?.give(answer)
    await settle()
    expect(halted.value).toBe(false)
    expect(stale.value).toBe(false)
  })
})

test('the answers of another piece do not stand in for this one', async () => {
  const { ask, sketches, answered } = bench()
  ask(job('a'), 'metric', 'one')
  sketches[0]?.give(answer)
  await settle()
  expect(answered.value?.job.piece).toBe('a')
  ask(job('a2'), 'metric', 'one')
  ask(job('b'), 'metric', 'two')
  expect(answered.value).toBeUndefined()
  // The sketch of the first piece comes late.
  sketches[1]?.give(answer)
  await settle()
  expect(answered.value).toBeUndefined()
  sketches[2]?.give(answer)
  await settle()
  expect(answered.value?.job.piece).toBe('b')
})
