import { Transfer } from 'workerpool'
import type { Forecast, Routes, SteelAnswer } from '#contract/answers.ts'
import { parseJob } from '#contract/parse-job.ts'
import { takeShop } from '#contract/parse-shop.ts'
import { pictured } from '#contract/pictured.ts'
import { InputProblems, type Problem } from '#contract/problems.ts'
import type { Mends } from '#contract/remedy-edits.ts'
import type { NamedSteel } from '#contract/steel-names.ts'
import type { CardOptions } from '#report/card.ts'
import type { JobText, ShopText } from '#web/job/job-text.ts'
import { type Fault, isFault } from './fault.ts'
import type { CardReply, ForecastQuestion, ForecastReply, Progress, RoutesQuestion, SteelQuestion } from './messages.ts'

type Emit = (progress: Progress) => void

/**
 * What the engine's thread can be asked. Faults of the input come back as `problems`; anything thrown is a fault of the program.
 * What the first look does not need is loaded when it is first asked for.
 */
export function tasks(emit: Emit) {
  const onProgress = (done: number, total: number, says: string): void => emit({ done, total, says })
  return {
    async forecast({ job, units, fineness }: ForecastQuestion): Promise<ForecastReply> {
      const mends = fineness === 'sketch' ? undefined : await fetchedMends()
      const reply = answering(job, () => pictured(job, { units, grade: fineness, onProgress }, mends))
      if (!('forecast' in reply)) return reply
      const { forecast, picture } = reply
      const buffers = Object.values(picture).flatMap((each) => (ArrayBuffer.isView(each) ? [each.buffer as ArrayBuffer] : []))
      // What crosses over is the reply; the wrapping only says which arrays go with it.
      return new Transfer({ kind: 'answer', forecast, picture } satisfies ForecastReply, [
        ...new Set(buffers),
      ]) as unknown as ForecastReply
    },

    async routes({ job, units }: RoutesQuestion): Promise<Routes | Fault> {
      const { proposeRoutes } = await import('#contract/routes-answer.ts')
      return faultsAside(() => proposeRoutes(job, { units, onProgress }))
    },

    async steel({ steel, options }: SteelQuestion): Promise<SteelAnswer | Fault> {
      const { describeSteel } = await import('#contract/steel-answer.ts')
      return faultsAside(() => describeSteel(steel, options))
    },

    /** A job file's text as the document it holds; `problems` are those of the document, which is kept all the same. */
    async read(text: string, name: string): Promise<{ document: unknown; problems: readonly Problem[] }> {
      const { readJobText } = await import('#contract/read-job.ts')
      const document = faultsAside(() => readJobText(text, name))
      if (isFault(document)) return { document: undefined, problems: document.problems }
      return { document, problems: problemsOf(document) }
    },

    /** A document as the text of a job file. */
    async write(job: JobText): Promise<string> {
      const { jobFileText } = await import('#contract/write-job.ts')
      return jobFileText(job)
    },

    /** The card of a forecast, or the size that would take it: fitting its words takes too long for the page's own thread. */
    async card(forecast: Forecast, options: CardOptions): Promise<CardReply> {
      const { CardTooSmall, cardFragment } = await import('#report/card.ts')
      const { CARD_STYLE, cardPageRule } = await import('#report/card-style.ts')
      try {
        const html = cardFragment(forecast, options)
        return { kind: 'card', html, rules: `${cardPageRule(options.size)}${CARD_STYLE}` }
      } catch (error) {
        if (error instanceof CardTooSmall) return { kind: 'too-small', says: error.message, take: error.take }
        throw error
      }
    },

    /** The steels that can be asked for by name. */
    async steels(): Promise<readonly NamedSteel[]> {
      const { namedSteels } = await import('#contract/steel-names.ts')
      return namedSteels()
    },

    /** What is at fault in a shop by itself. */
    shopProblems(shop: ShopText): readonly Problem[] {
      const problems: Problem[] = []
      takeShop(shop, 'shop', problems)
      return problems
    },

    /** What is at fault in a document, treatment or not. */
    problems(job: JobText): readonly Problem[] {
      return problemsOf(job)
    },
  }
}

export type Tasks = ReturnType<typeof tasks>

/** What to try about findings comes after the first sketch. A forecast without it is better than none. */
async function fetchedMends(): Promise<Mends | undefined> {
  try {
    return (await import('#contract/remedy-edits.ts')).mends
  } catch (error) {
    console.error('quenchwright: what to try about findings could not be fetched:', error)
    return undefined
  }
}

function answering<Answer>(job: JobText, ask: () => Answer): Answer | ForecastReply {
  if ((job.process ?? []).length > 0) return faultsAside(ask)
  const read = faultsAside(() => parseJob(job, { process: 'absent-ok' }))
  return isFault(read) ? read : { kind: 'no-process', assumptions: read.assumptions }
}

function problemsOf(document: unknown): readonly Problem[] {
  const read = faultsAside(() => parseJob(document, { process: 'absent-ok' }))
  return isFault(read) ? read.problems : []
}

function faultsAside<Answer>(ask: () => Answer): Answer | Fault {
  try {
    return ask()
  } catch (error) {
    if (error instanceof InputProblems) return { kind: 'problems', problems: error.problems }
    throw error
  }
}
