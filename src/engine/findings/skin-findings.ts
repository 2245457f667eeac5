import type { SkinOutlook } from '#engine/ensemble/skin-outlook.ts'
import { atmosphereOf } from '#engine/surface-heat/atmosphere.ts'
import type { Atmosphere } from '#engine/surface-heat/gear.ts'
import { type Account, lastHardening } from './account.ts'
import type { EngineFinding } from './finding.ts'
import type { Wording } from './wording.ts'

/** A soft skin thicker than a file judges hides what is under it, and a stroke or two of the stone is not enough [m]: common practice, no source. */
const SOFT_SKIN_M = 0.0001
/** From this share of the half thickness on, the two skins of a thin part are most of it: common practice, no source. */
const THIN_SHARE = 0.25
/** An ordinary file bites up to about here, and skates from about here on [HRC]: common practice, no source. */
const BITES_HRC = 57
const SKATES_HRC = 60
/** Steps in which a smith grinds [m]. */
const STROKE_M = 0.00005

/** The skin that the fires have spoiled, where it is worth telling: the worst place, with what to grind off. */
export function skinFindings(account: Account, say: Wording): EngineFinding[] {
  const last = lastHardening(account)
  if (last === undefined || account.steel.composition.C < 0.3) return []
  const [worst] = [...(account.outlook.skins ?? [])]
    .filter(({ grindOffM }) => grindOffM.value >= SOFT_SKIN_M)
    .sort((a, b) => b.grindOffM.value - a.grindOffM.value)
  if (worst === undefined) return []
  const { grindOffM, decarburisedM, halfThicknessM, at } = worst
  const thin = grindOffM.value > THIN_SHARE * halfThicknessM
  const grind = upToStroke(grindOffM.value)
  const where = worst.zone === undefined ? '' : ` of the ${worst.zone}`
  const range = `${say.depth(upToStroke(grindOffM.low))} to ${say.depth(upToStroke(grindOffM.high))}`
  return [
    {
      id: 'decarburised-skin',
      severity: thin ? 'warn' : 'note',
      where: { step: last.heat.step, ...(worst.zone === undefined ? {} : { zone: worst.zone }), xM: at.spot.xM },
      says: thin
        ? `The fire takes carbon out of the skin${where}: little sound steel is left between.`
        : `The fire takes carbon out of the skin${where}: ${fileSays(worst)}.`,
      because: `Less than nine tenths of the carbon stand down to ${say.depth(decarburisedM.value)}; hard as underneath from ${say.depth(grind)} on (${range})${thin ? `, of ${say.depth(2 * halfThicknessM)} in all` : ''}. ${capital(airsOf(account))}; heats at the anvil before are not counted.`,
      remedy: `${thin ? 'Leave it thicker, and grind' : 'Grind'} ${say.depth(grind)} off after the temper, wet, and judge it there. Fewer and shorter heats, a richer fire, or a closed pipe with a bit of charcoal.`,
      figures: { grindOffM: grind },
    },
  ]
}

/** What a file tells right out of the quench. */
export function fileSays({ filedHrc, at }: Pick<SkinOutlook, 'filedHrc' | 'at'>): string {
  const skin = filedHrc.value
  const under = at.quenchedHrc.value
  if (under < BITES_HRC)
    return skin < under - 3 ? 'a file bites deep at first, and less further in' : 'a file bites, in the skin and under it'
  if (skin < BITES_HRC) return under >= SKATES_HRC ? 'a file bites there, and then skates' : 'a file bites there, and then drags'
  if (skin < SKATES_HRC) return 'a file drags on it'
  return 'a file skates on it'
}

function upToStroke(depthM: number): number {
  return Math.ceil(depthM / STROKE_M - 1e-9) * STROKE_M
}

const WORDS: { readonly [Each in Atmosphere]: string } = {
  oxidising: 'in open air',
  neutral: 'burning neutral',
  rich: 'burning rich',
  packed: 'packed',
}

/** "gas forge burning neutral, kiln in open air". */
function airsOf({ records }: Account): string {
  const told = records.flatMap((record) =>
    'widestGapK' in record ? [`the ${record.fire.name} is taken as ${WORDS[atmosphereOf(record.fire)]}`] : [],
  )
  return [...new Set(told)].join(', ')
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}
