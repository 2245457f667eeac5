import type { EngineFinding } from '#engine/findings/finding.ts'
import type { Wording } from '#engine/findings/wording.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { HardnessAim } from '#engine/simulation/process.ts'
import type { Refusal } from './media.ts'
import type { Route } from './routes.ts'
import type { SteelPractice } from './steel-practice.ts'
import { type Layout, tooNear } from './zones.ts'

export interface None {
  readonly because: string
  readonly nearest: string
}

export function noFire(): None {
  return {
    because: 'The shop names no fire to harden from.',
    nearest: 'Add the fire that you have: coal, charcoal, gas, a muffle or a torch.',
  }
}

export function fireTooCool(name: string, toK: number, wording: Wording): None {
  return {
    because: `The ${name} does not bring this piece to ${wording.temperature(toK)}.`,
    nearest: 'A hotter fire, or a smaller piece.',
  }
}

export function noBath(job: Job, refused: readonly Refusal[], { facts, media }: SteelPractice): None {
  const wanted = media.join(' or ')
  return {
    because:
      refused.length === 0
        ? `The shop names no bath; ${facts.name} wants ${wanted}.`
        : `No bath in this shop suits ${facts.name} ${job.shop.baths.length > 1 ? '' : `(there is only the ${refused[0]?.says}) `}: ${refused[0]?.because}.`.replace(
            ' :',
            ':',
          ),
    nearest: `The same process with a bath that suits the steel: ${wanted}.`,
  }
}

export function noOven({ facts }: SteelPractice): None {
  return {
    because: `There is no oven in this shop, and no muffle, to temper in; colours by the heat left in the body do not do for this piece of ${facts.name}.`,
    nearest:
      'A kitchen oven kept for the shop with a thermometer of its own, or a muffle in the fire; or write down a process with a temper on a hot block, by colour, and have it forecast.',
  }
}

export function cannotAnneal({ facts }: SteelPractice): None {
  return {
    because: `${facts.name} hardens in air, so that no box of ashes softens it: it wants a muffle that cools it by the hour, and the shop has none.`,
    nearest: 'Bar bought annealed and not heated above black heat, or a muffle.',
  }
}

/** Most telling first; one is said, not all. */
const REASONS: readonly string[] = [
  'steel-will-not-harden',
  'aim-out-of-reach',
  'bath-too-shallow',
  'bath-too-small',
  'bath-too-slow',
  'oven-cannot-reach',
  'struck-end-hard',
]

/** Why no way will do, from the best one that was tried: what it misses, and what it would give instead. */
export function whyNone(job: Job, layout: Layout, nearest: Route | undefined, wording: Wording): None {
  if (nearest === undefined)
    return {
      because: 'No fire here brings the piece to its heat evenly, or no oven goes to a temper that is of use.',
      nearest: 'A hotter oven or a more even fire, such as a muffle.',
    }
  const told = tellingFinding(layout, nearest)
  return {
    because: told === undefined ? missOf(job, layout, nearest, wording) : `${told.says} ${told.because}`,
    nearest: `${sentence(nearest.says)}: ${figuresOf(nearest, wording)}.${told === undefined || told.remedy === '' ? '' : ` ${told.remedy}`}`,
  }
}

/** What stands in the way of the best way that was tried; undefined where zones too near each other do, or where it is only the odds. */
function tellingFinding(layout: Layout, { findings }: Route): EngineFinding | undefined {
  const found = REASONS.flatMap((id) =>
    findings.filter((finding) => finding.id === id && (finding.severity !== 'note' || id === 'bath-too-slow')).slice(0, 1),
  )
  const ofSteel = found.find(({ id }) => id === 'steel-will-not-harden' || id === 'aim-out-of-reach')
  return ofSteel ?? (tooNear(layout) === undefined ? found[0] : undefined)
}

function missOf(job: Job, layout: Layout, { outlook }: Route, wording: Wording): string {
  const near = tooNear(layout)
  if (near !== undefined) {
    const { hard, soft, gapM } = near
    const between = gapM < 0.001 ? 'nothing' : wording.length(gapM)
    const fall = `${wording.hardness(hard.aim.lowHrc ?? 0)} to ${wording.hardness(soft.aim.highHrc ?? 0)}`
    return `The ${hard.name} and the ${soft.name} lie too near: with ${between} between them the hardness can't fall from ${fall}; leave a thickness of the piece, about ${wording.length(layout.acrossM)}.`
  }
  const worst = [...outlook.zones].sort((a, b) => a.chance - b.chance)[0]
  if (worst === undefined) return 'No zone has an aim.'
  const hard = worst.tooHard > worst.tooSoft
  return `The ${worst.zone.name} comes out ${hard ? 'too hard' : 'too soft'} in ${Math.round(100 * Math.max(worst.tooHard, worst.tooSoft))} of 100 such pieces, whichever way this shop makes the ${job.piece}.`
}

function figuresOf({ outlook }: Route, wording: Wording): string {
  return outlook.zones
    .map(({ zone, temperedHrc: { value, low, high }, chance }) => {
      const band =
        value < SOFT_HRC
          ? `soft, under ${wording.hardness(SOFT_HRC)}`
          : `${wording.hardness(value)} (${Math.round(Math.max(low, 0))} to ${Math.round(high)})`
      return `${zone.name} ${band}, wanted ${aimInWords(zone.aim)}, ${Math.round(100 * chance)} of 100`
    })
    .join('; ')
}

/** The scale tells nothing below this [HRC]. */
const SOFT_HRC = 20

function aimInWords({ lowHrc, highHrc }: HardnessAim): string {
  const figure = (hrc: number): number => Math.round(10 * hrc) / 10
  if (lowHrc !== undefined && highHrc !== undefined) return `${figure(lowHrc)} to ${figure(highHrc)}`
  return lowHrc !== undefined ? `at least ${figure(lowHrc)}` : `at most ${figure(highHrc ?? 0)}`
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
