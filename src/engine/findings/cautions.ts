import type {
  ColoursRecord,
  HeatRecord,
  QuenchRecord,
  StepRecord,
  TemperRecord,
  WarmBathRecord,
} from '#engine/simulation/records.ts'
import { isOil, isWater } from './account.ts'
import { flashK } from './bath-limits.ts'
import { IN_METRIC, type Wording } from './wording.ts'

/** One thing to mind: in whole sentences, and in as few words as keep its meaning, for a small card. */
interface Caution {
  readonly says: string
  readonly short: string
}

/**
 * What to mind at a step, in short sentences; printed with the step and never left out. They are reminders: local codes, the
 * maker's sheets and licensed practice go before them. Facts after OSHA 3080 and 29 CFR 1926.301, CCOHS (heat treating), DGUV 209-001,
 * WAC 296-835 (dip tanks) and public fire-safety advice; the rest is common practice, no source.
 */
export function cautionsOf(record: StepRecord, say: Wording = IN_METRIC): string[] {
  return ofStep(record, say).map(({ says }) => says)
}

/** The same cautions, one for one and in the same order, in fewer words. */
export function shortCautionsOf(record: StepRecord, say: Wording = IN_METRIC): string[] {
  return ofStep(record, say).map(({ short }) => short)
}

function ofStep(record: StepRecord, say: Wording): Caution[] {
  switch (record.kind) {
    case 'heat':
    case 'normalise':
    case 'anneal':
    case 'stress-relieve':
      return fireCautions(record)
    case 'carry':
      return [caution('Clear way to the quench, nobody in it; call "hot metal".', 'Clear way, nobody in it; call "hot metal".')]
    case 'quench':
      return quenchCautions(record, say)
    case 'temper':
      return temperCautions(record)
    case 'warm-bath':
      return warmBathCautions(record, say)
    case 'run-colours':
      return coloursCautions(record, say)
  }
}

function caution(says: string, short: string): Caution {
  return { says, short }
}

function fireCautions({ kind, fire }: HeatRecord): Caution[] {
  const cautions = [
    caution('Eye protection: hot scale flies. Do not stare into the fire.', 'Eye protection; do not stare into the fire.'),
  ]
  if (fire.kind !== 'muffle')
    cautions.push(
      fire.kind === 'torch'
        ? caution(
            "Flame: check hoses and valves, nothing that burns behind the piece; follow the torch maker's sheet.",
            "Check hoses and valves; nothing that burns behind; the maker's sheet rules.",
          )
        : caution(
            'Carbon monoxide: keep the air moving and an alarm near your head; coal and gas fires both give it off.',
            'Carbon monoxide: moving air, alarm near your head.',
          ),
    )
  else
    cautions.push(
      caution(
        'Oven: power off before you reach in, if its sheet says so; dry gloves, face shield.',
        'Power off to reach in if its sheet says so; dry gloves, face shield.',
      ),
    )
  cautions.push(
    caution(
      'Nothing galvanised, plated, painted or leaded into the fire; no closed tubes.',
      'Nothing galvanised, plated, painted, leaded; no closed tubes.',
    ),
  )
  if (kind === 'normalise' || kind === 'anneal' || kind === 'stress-relieve')
    cautions.push(caution('Black metal still burns: mark it hot while it cools.', 'Black metal burns: mark it hot.'))
  return cautions
}

const GLASS = caution(
  'Until it is tempered it is glass: no test blows, no dropping, no vice.',
  'Untempered it is glass: no blows, no dropping, no vice.',
)
const STEAM = caution('Steam and spit: long sleeves, face shield.', 'Steam and spit: long sleeves, face shield.')

function quenchCautions({ bath, depthM }: QuenchRecord, say: Wording): Caution[] {
  if (isOil(bath)) return [...oilCautions(depthM !== null, flashK(bath), say), GLASS]
  if (isWater(bath))
    return [
      caution(
        'Steam and spit: long sleeves, face shield, hands out of the steam.',
        'Steam and spit: long sleeves, face shield, hands clear.',
      ),
      caution('It may crack with a bang: eye protection on for all near.', 'May crack with a bang: eye protection for all near.'),
      GLASS,
    ]
  return [
    caution(
      'It stays hot enough to burn long after the colour is gone: mark it hot.',
      'Burns long after the colour is gone: mark it hot.',
    ),
    GLASS,
  ]
}

function oilCautions(partly: boolean, flash: number | undefined, say: Wording): Caution[] {
  return [
    caution(
      'Steel tank with a lid within reach; class B or dry-powder extinguisher at hand. Never water on an oil fire.',
      'Steel tank, lid in reach, class B or dry powder at hand; never water on burning oil.',
    ),
    caution(
      'No water in the oil, not a drop: it boils under the oil and throws it out burning.',
      'Not a drop of water in the oil.',
    ),
    partly
      ? caution(
          'Go in quickly to the line and keep red metal and hot tongs off the surface: flames start there.',
          'In quickly to the line; no red metal or hot tongs at the surface.',
        )
      : caution(
          'Plunge it quickly and wholly under, tongs cool; do not hover: flames start where hot steel meets the surface.',
          'Quickly and wholly under, tongs cool; do not hover.',
        ),
    caution(
      'Away from furnaces and from anything that burns, not indoors among combustibles; moving air, out of the smoke.',
      'Away from furnaces and all that burns; moving air, out of the smoke.',
    ),
    caution(
      `Your fire code and the oil maker's sheet rule${flash === undefined ? '' : `; keep the oil ${say.temperature(flash - 28)} or cooler unless the sheet allows more`}.`,
      `Fire code and oil sheet rule${flash === undefined ? '' : `; oil ${say.temperature(flash - 28)} at most unless the sheet allows more`}.`,
    ),
  ]
}

function temperCautions({ oven, fire }: TemperRecord): Caution[] {
  const cautions = [caution('Wipe all oil off first: it smokes and can catch.', 'Wipe all oil off: it smokes, can catch.')]
  if (oven !== undefined)
    cautions.push(
      caution(
        'Not in an oven that is used for food; moving air. Never in a pot of oil on a flame.',
        'No food oven; moving air. Never a pot of oil on a flame.',
      ),
    )
  if (fire !== undefined)
    cautions.push(
      caution(
        'Open flame: eye protection, nothing that burns near; water at hand for the steel, not for oil.',
        'Flame: eye protection, nothing that burns near; water for the steel, not for oil.',
      ),
    )
  cautions.push(caution('At this heat steel looks cold: gloves, and mark it hot.', 'Looks cold and burns: gloves, mark it hot.'))
  return cautions
}

function warmBathCautions({ bath }: WarmBathRecord, say: Wording): Caution[] {
  return isOil(bath)
    ? [
        caution(
          'Push the hot bar under quickly and wholly; a bar that stands out lights the oil.',
          'Hot bar quickly and wholly under: standing out it lights the oil.',
        ),
        ...oilCautions(false, flashK(bath), say),
      ]
    : [STEAM]
}

function coloursCautions({ bath }: ColoursRecord, say: Wording): Caution[] {
  return [
    caution('The body is still hot enough to burn and to light oil.', 'The body still burns and lights oil.'),
    ...(isOil(bath) ? oilCautions(false, flashK(bath), say) : [STEAM]),
    GLASS,
  ]
}
