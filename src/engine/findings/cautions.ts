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

/**
 * What to mind at a step, in short sentences; printed with the step and never left out. They are reminders: local codes, the
 * maker's sheets and licensed practice go before them. Facts after OSHA 3080 and 29 CFR 1926.301, CCOHS (heat treating), DGUV 209-001,
 * WAC 296-835 (dip tanks) and public fire-safety advice; the rest is common practice, no source.
 */
export function cautionsOf(record: StepRecord, say: Wording = IN_METRIC): string[] {
  switch (record.kind) {
    case 'heat':
    case 'normalise':
    case 'anneal':
    case 'stress-relieve':
      return fireCautions(record)
    case 'carry':
      return ['Clear way to the quench, nobody in it; call "hot metal".']
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

function fireCautions({ kind, fire }: HeatRecord): string[] {
  const cautions = ['Eye protection: hot scale flies. Do not stare into the fire.']
  if (fire.kind !== 'muffle')
    cautions.push(
      fire.kind === 'torch'
        ? "Flame: check hoses and valves, nothing that burns behind the piece; follow the torch maker's sheet."
        : 'Carbon monoxide: keep the air moving and an alarm near your head; coal and gas fires both give it off.',
    )
  else cautions.push('Oven: power off before you reach in, if its sheet says so; dry gloves, face shield.')
  cautions.push('Nothing galvanised, plated, painted or leaded into the fire; no closed tubes.')
  if (kind === 'normalise' || kind === 'anneal' || kind === 'stress-relieve')
    cautions.push('Black metal still burns: mark it hot while it cools.')
  return cautions
}

const GLASS = 'Until it is tempered it is glass: no test blows, no dropping, no vice.'

function quenchCautions({ bath, depthM }: QuenchRecord, say: Wording): string[] {
  if (isOil(bath)) return [...oilCautions(depthM !== null, flashK(bath), say), GLASS]
  if (isWater(bath))
    return [
      'Steam and spit: long sleeves, face shield, hands out of the steam.',
      'It may crack with a bang: eye protection on for all near.',
      GLASS,
    ]
  return ['It stays hot enough to burn long after the colour is gone: mark it hot.', GLASS]
}

function oilCautions(partly: boolean, flash: number | undefined, say: Wording): string[] {
  return [
    'Steel tank with a lid within reach; class B or dry-powder extinguisher at hand. Never water on an oil fire.',
    'No water in the oil, not a drop: it boils under the oil and throws it out burning.',
    partly
      ? 'Go in quickly to the line and keep red metal and hot tongs off the surface: flames start there.'
      : 'Plunge it quickly and wholly under, tongs cool; do not hover: flames start where hot steel meets the surface.',
    'Away from furnaces and from anything that burns, not indoors among combustibles; moving air, out of the smoke.',
    `Your fire code and the oil maker's sheet rule${flash === undefined ? '' : `; keep the oil ${say.temperature(flash - 28)} or cooler unless the sheet allows more`}.`,
  ]
}

function temperCautions({ oven, fire }: TemperRecord): string[] {
  const cautions = ['Wipe all oil off first: it smokes and can catch.']
  if (oven !== undefined) cautions.push('Not in an oven that is used for food; moving air. Never in a pot of oil on a flame.')
  if (fire !== undefined)
    cautions.push('Open flame: eye protection, nothing that burns near; water at hand for the steel, not for oil.')
  cautions.push('At this heat steel looks cold: gloves, and mark it hot.')
  return cautions
}

function warmBathCautions({ bath }: WarmBathRecord, say: Wording): string[] {
  return isOil(bath)
    ? [
        'Push the hot bar under quickly and wholly; a bar that stands out lights the oil.',
        ...oilCautions(false, flashK(bath), say),
      ]
    : ['Steam and spit: long sleeves, face shield.']
}

function coloursCautions({ bath }: ColoursRecord, say: Wording): string[] {
  return [
    'The body is still hot enough to burn and to light oil.',
    ...(isOil(bath) ? oilCautions(false, flashK(bath), say) : ['Steam and spit: long sleeves, face shield.']),
    GLASS,
  ]
}
