import type { System } from '#units/length.ts'
import type { Skin } from './grind.ts'
import { depthSays, hrcSays } from './told-figures.ts'

const WIDE = 300
const HIGH = 168
const LEFT = 30
const RIGHT = WIDE - 8
const TOP = 22
const FOOT = HIGH - 24
const LEAST_HRC = 20
const MOST_HRC = 70
/** What a file judges [mm]. */
const FILED_MM = 0.08

/** Finished hardness by depth under the skin, with its band: what a file feels is shaded, how far to grind is marked. */
export function SkinPlot({ skin, units }: { readonly skin: Skin; readonly units: System }) {
  const { profile, grindOff_mm } = skin
  const [surface, sound] = [profile[0], profile.at(-1)]
  if (surface === undefined || sound === undefined) return null
  const deepest = Math.max(sound.depth_mm, 2 * FILED_MM)
  const x = (mm: number): number => LEFT + ((RIGHT - LEFT) * Math.min(mm, deepest)) / deepest
  const y = (hrc: number): number =>
    FOOT - ((FOOT - TOP) * (Math.min(MOST_HRC, Math.max(LEAST_HRC, hrc)) - LEAST_HRC)) / (MOST_HRC - LEAST_HRC)
  const path = (points: readonly (readonly [number, number])[]): string =>
    points.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${px.toFixed(1)} ${py.toFixed(1)}`).join('')
  const along = (of: 'low' | 'value' | 'high') =>
    // As deep as it was followed; beneath that it goes on as it is.
    [...profile, { ...sound, depth_mm: deepest }].map(({ depth_mm, hardness_HRC }) => [x(depth_mm), y(hardness_HRC[of])] as const)
  const grindX = x(grindOff_mm.value)
  return (
    <figure class="skin-plot">
      <svg
        viewBox={`0 0 ${WIDE} ${HIGH}`}
        role="img"
        aria-label={`Hardness by depth after tempering: ${hrcSays(surface.hardness_HRC.value)} HRC at the surface, ${hrcSays(sound.hardness_HRC.value)} HRC ${depthSays(sound.depth_mm, units)} down.`}
      >
        <rect class="skin-filed" x={x(0)} y={TOP} width={x(FILED_MM) - x(0)} height={FOOT - TOP} />
        {[20, 40, 60].map((hrc) => (
          <g key={hrc}>
            <line class="skin-grid" x1={LEFT} x2={RIGHT} y1={y(hrc)} y2={y(hrc)} />
            <text class="skin-text" x={LEFT - 6} y={y(hrc) + 5} text-anchor="end">
              {hrc}
            </text>
          </g>
        ))}
        <path class="skin-band" d={`${path([...along('high'), ...along('low').toReversed()])}Z`} />
        <path class="skin-line" d={path(along('value'))} />
        {grindOff_mm.value > 0 && <line class="skin-grind" x1={grindX} x2={grindX} y1={TOP - 4} y2={FOOT} />}
        <text class="skin-text" x={LEFT} y={FOOT + 19}>
          0
        </text>
        <text class="skin-text" x={RIGHT} y={FOOT + 19} text-anchor="end">
          {depthSays(deepest, units)}
        </text>
        <text class="skin-text" x={RIGHT} y={TOP - 6} text-anchor="end">
          HRC by depth
        </text>
      </svg>
      <figcaption class="soft">Shaded: what a file feels. Upright line: grind to here. The band holds nine in ten.</figcaption>
    </figure>
  )
}
