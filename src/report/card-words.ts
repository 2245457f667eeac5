import type { Finding, Forecast } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import type { System } from '#units/length.ts'
import type { Wordiness } from './card-sizes.ts'
import { aimWords, bandText, chanceText, hardnessText, inOrder, SEVERITY_WORDS, temperatureOf } from './figure-text.ts'
import { headline } from './step-card.ts'

/** Something to fill in by hand: a figure, a longer word, or a small box for each time that a step is done. */
export interface Blank {
  readonly label: string
  readonly room: 'figure' | 'word' | { readonly boxes: number }
}

export interface StepWords {
  /** `2  Heat, gas forge`. */
  readonly head: string
  readonly clock: string
  readonly does: string
  /** Everything to mind here. */
  readonly care: string
  readonly blanks: readonly Blank[]
}

export interface ZoneWords {
  readonly name: string
  readonly says: string
  readonly blanks: readonly Blank[]
}

export interface CardWords {
  readonly piece: string
  readonly steel: string
  readonly headBlanks: readonly Blank[]
  /** What stands against it, to be read before the first step: what, and what to mind where it has no step. */
  readonly before: readonly { readonly head: string; readonly says: string }[]
  readonly steps: readonly StepWords[]
  readonly zones: readonly ZoneWords[]
  readonly proof: readonly Blank[]
  readonly foot: readonly string[]
}

export interface CardSaid {
  readonly wordiness: Wordiness
  readonly units: System
  readonly generatedBy: string
}

/** All that a card says, in so many words. The order and the number of steps, cautions and zones never change with it. */
export function cardWords(forecast: Forecast, { wordiness, units, generatedBy }: CardSaid): CardWords {
  const findings = inOrder(forecast.findings)
  return {
    piece: forecast.piece,
    steel: forecast.steel,
    headBlanks: [
      { label: 'Date', room: 'word' },
      { label: 'Done by', room: 'word' },
    ],
    before: beforeOf(findings, forecast, wordiness),
    steps: stepsOf(forecast, findings, wordiness, units),
    zones: zonesOf(forecast, wordiness),
    proof: [{ label: wordiness.sentences ? 'Cracks looked for' : 'Cracks', room: wordiness.sentences ? 'word' : 'figure' }],
    foot: footOf(
      forecast,
      wordiness,
      generatedBy,
      findings.filter((finding) => finding.severity === 'note' && !isTold(finding, forecast, wordiness)).length,
    ),
  }
}

/** On a small card the caution stands without the number of the rule it comes from. */
function cautionIn(caution: string, { sentences }: Wordiness): string {
  return sentences ? caution : caution.replace(/ \((?:OSHA )?\d+ CFR [\d.]+\)/gu, '')
}

/** Told before the first step: all that says stop, what can hurt and has no step to stand at, and the rest where there is room. */
function isTold(finding: Finding, forecast: Forecast, { sentences, warnings }: Wordiness): boolean {
  const { severity, caution } = finding
  if (severity === 'stop' || sentences || (severity === 'warn' && warnings)) return true
  return caution !== undefined && stepOf(finding, forecast) === undefined
}

function beforeOf(findings: readonly Finding[], forecast: Forecast, wordiness: Wordiness): CardWords['before'] {
  const told = findings
    .filter((finding) => isTold(finding, forecast, wordiness))
    .map((finding) => {
      const { severity, says, remedy, caution } = finding
      // A caution that has a step of its own stands there.
      const care = caution === undefined || stepOf(finding, forecast) !== undefined ? [] : [cautionIn(caution, wordiness)]
      const mend = wordiness.sentences && severity !== 'note' ? [remedy] : []
      return { head: `${SEVERITY_WORDS[severity]}.`, says: [says, ...mend, ...care].join(' ') }
    })
  const kept = findings.filter((finding) => finding.severity === 'warn' && !isTold(finding, forecast, wordiness)).length
  const pointer = {
    head: `${SEVERITY_WORDS.warn}.`,
    says: `${kept} more to mind in the plan: read it before you light the fire.`,
  }
  return kept === 0 ? told : [...told, pointer]
}

function stepOf({ where }: Finding, { steps }: Forecast): number | undefined {
  return where?.step !== undefined && where.step >= 0 && where.step < steps.length ? where.step : undefined
}

function stepsOf(forecast: Forecast, findings: readonly Finding[], wordiness: Wordiness, units: System): StepWords[] {
  const { sentences, repeats } = wordiness
  const cautions = forecast.steps.map(({ cautions: ofStep, inShort }, i) => {
    const ofFindings = findings.flatMap((finding) =>
      finding.caution !== undefined && stepOf(finding, forecast) === i ? [cautionIn(finding.caution, wordiness)] : [],
    )
    return [...new Set([...(sentences ? ofStep : (inShort?.cautions ?? ofStep)), ...ofFindings])]
  })
  return forecast.steps.map((step, i) => ({
    head: `${i + 1}  ${headline(step)}`,
    clock: formatDuration(step.end_s - step.start_s),
    does: doesOf(forecast, i, wordiness),
    care: repeats ? (cautions[i] ?? []).join(' ') : onceOnly(cautions, i),
    blanks: blanksOf(forecast, i, sentences ? undefined : units),
  }))
}

/** What to do and what to look for; the temperatures of a bath stand at the blanks beside it. */
function doesOf({ steps, baths }: Forecast, at: number, { sentences }: Wordiness): string {
  const step = steps[at]
  if (step === undefined) return ''
  if (sentences || step.inShort === undefined) return step.says
  const { does, look } = step.inShort
  return [does, ...(look === undefined || wetBath(baths, at) !== undefined ? [] : [look])].map(sentence).join(' ')
}

function wetBath(baths: Forecast['baths'], at: number): Forecast['baths'][number] | undefined {
  return baths.find(({ step, kind }) => step === at && !kind.endsWith('air'))
}

/**
 * The cautions of a step, with those that a step before it has pointed to there. Only where they are most of that step's own: a
 * pointer to ten sentences of which two are meant hides the two.
 */
function onceOnly(cautions: readonly (readonly string[])[], at: number): string {
  const own = cautions[at] ?? []
  const seen = cautions.slice(0, at).findIndex((before) => {
    const shared = before.filter((each) => own.includes(each)).length
    return shared >= 2 && shared * 2 > before.length
  })
  if (seen < 0) return own.join(' ')
  const others = own.filter((each) => !(cautions[seen] ?? []).includes(each))
  return [`As at ${seen + 1}.`, ...others].join(' ')
}

/** Blanks of a step, by what is done there; fewer and with the figures to expect where words are few. */
function blanksOf({ steps, baths }: Forecast, at: number, terseIn: System | undefined): Blank[] {
  const step = steps[at]
  if (step === undefined) return []
  const roomy = terseIn === undefined
  const bath = wetBath(baths, at)
  const figure = (label: string): Blank => ({ label, room: 'figure' })
  const rounds: Blank[] =
    step.times === undefined ? [] : [{ label: 'Times', room: step.times > 6 ? 'figure' : { boxes: step.times } }]
  switch (step.do) {
    case 'heat':
      return [figure('Fire read'), ...(roomy ? [figure('At heat at')] : []), { label: 'Colour', room: 'word' }]
    case 'normalise':
      return [figure('Fire read'), ...rounds]
    case 'anneal':
      return [figure('Fire read'), figure('Shut in at')]
    case 'stress-relieve':
      return [figure('Fire read'), figure('Out at')]
    case 'carry':
      return [figure(roomy ? 'Seconds walked' : 'Seconds')]
    case 'quench':
      if (bath === undefined) return [figure('Out at'), figure('Hand-warm at')]
      return roomy
        ? [figure('Bath before'), figure('After')]
        : [figure(`Bath (${temperatureOf(bath.start_C, terseIn)})`), figure(`After (${temperatureOf(bath.end_C, terseIn)})`)]
    case 'temper':
      return [figure('Thermometer'), ...(roomy ? [figure('In at')] : []), figure('Out at'), ...rounds]
    case 'warm-bath':
      return [figure('Bath before'), figure('After')]
    case 'run-colours':
      return [{ label: 'Colour', room: 'word' }, figure('Seconds')]
    default:
      return [figure('Done at')]
  }
}

function zonesOf({ zones }: Forecast, { sentences }: Wordiness): ZoneWords[] {
  const blanks: Blank[] = [
    { label: sentences ? 'File skates at' : 'File', room: 'figure' },
    { label: 'Tester', room: 'figure' },
  ]
  if (zones.length === 0) return [{ name: 'Proof', says: 'No zone was asked for.', blanks }]
  return zones.map(({ name, aim, assumed, tempered_HRC, chance }) => {
    const hardness = sentences ? hardnessText(tempered_HRC) : hardnessText(tempered_HRC).replace(/ HRC$/u, '')
    return {
      name,
      says: `aim ${aimWords(aim)}${assumed ? ' (assumed)' : ''}, forecast ${hardness} (${bandText(tempered_HRC)}), ${chanceText(chance)}.`,
      blanks,
    }
  })
}

function footOf(
  { sources, grade, members, seed }: Forecast,
  { sentences }: Wordiness,
  generatedBy: string,
  untold: number,
): string[] {
  const more = untold === 0 ? '' : ` ${untold === 1 ? 'A note more' : `${untold} notes more`} in the plan.`
  const made = `${generatedBy}; ${grade}, ${members} bars and days, seed ${seed}. Brackets hold nine in ten.${more} A forecast, no certificate: local codes and makers’ sheets rule.`
  if (sentences) return [`Sources. ${sources.map(sentence).join(' ')}`, made]
  const first = sources.slice(0, 2).map((source) => sentence(/^[^;,(]*/u.exec(source)?.[0] ?? source))
  return [`Sources. ${first.join(' ')} All of them in the plan. ${made}`]
}

/** With a capital, and one full stop at its end. */
function sentence(text: string): string {
  const trimmed = text.trim().replace(/\.$/u, '')
  return trimmed === '' ? '' : `${trimmed.charAt(0).toUpperCase()}${trimmed.slice(1)}.`
}
