import type { StepText } from '#web/job/job-text.ts'
import { wordsOf } from './process-edits.ts'
import { kindOf } from './step-fields.ts'

/** A step in one line, in the figures as typed: `gas forge, to 945 °C, hold 40 min, 0 mm to 100 mm`. */
export function stepSummary(step: StepText): string {
  const words = (path: string): string => wordsOf(step, path)
  const written = (path: string, before = ''): string => (words(path) === '' ? '' : `${before}${words(path)}`)
  const rounds = ['', '', 'twice'][Number(words('times') || 1)] ?? `${words('times')} times`
  const part = step.part === undefined ? '' : `${words('part.from') === '' ? '0' : words('part.from')} to ${words('part.to')}`
  const depth = /^\s*(?:whole|all)?\s*$/iu.test(words('depth')) ? '' : `${words('depth')} deep`
  const parts = ((): string[] => {
    switch (kindOf(step)) {
      case 'heat':
      case 'normalise':
      case 'anneal':
      case 'stress-relieve':
        return [
          words('in'),
          written('to', 'to '),
          written('hold', 'hold '),
          rounds,
          written('cool', /\d/u.test(words('cool')) ? 'down by ' : 'cooled in '),
          part,
          words('atmosphere') === 'packed' ? 'packed' : '',
          step.even === false || step.even === 'no' ? 'as it comes' : '',
        ]
      case 'carry':
        return [words('for')]
      case 'quench':
        return [words('in'), depth, written('for')]
      case 'temper':
        return [words('in'), written('at'), written('hold', 'hold '), rounds, part]
      case 'warm-bath':
        return [words('in'), `a bar ${words('with.across')} x ${words('with.length')} at ${words('with.at')}`]
      case 'run-colours':
        return [written('stop', 'stop at '), words('in'), depth]
      case undefined:
        return []
    }
  })()
  return parts.filter((each) => each !== '').join(', ')
}
