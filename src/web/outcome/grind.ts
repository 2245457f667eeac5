import type { Forecast } from '#contract/answers.ts'

export type Skin = NonNullable<Forecast['skin']>[number]

/** Less than this no stone takes off on purpose [mm]. */
const WORTH_GRINDING_MM = 0.02

export function skinOfZone({ skin = [] }: Pick<Forecast, 'skin'>, name: string | undefined): Skin | undefined {
  return skin.find(({ where }) => where.zone === name)
}

/** What must come off before the steel is met [mm]; undefined where it is not worth a word. */
export function grindOffMm({ grindOff_mm }: Skin): number | undefined {
  return grindOff_mm.value < WORTH_GRINDING_MM ? undefined : grindOff_mm.value
}
