import { parseVolume } from '#units/amount.ts'
import { parseLength } from '#units/length.ts'

/** A tank as tall and as wide as its depth and volume make it, were it round. */
export function tankShape(
  bath: Readonly<Record<string, string>>,
): { readonly depthM: number; readonly acrossM: number } | undefined {
  const depth = parseLength(bath.depth)
  const volume = parseVolume(bath.volume)
  if (!depth.ok || !volume.ok) return undefined
  const depthM = depth.value.lengthM
  return { depthM, acrossM: Math.sqrt((4 * volume.value.volumeM3) / (Math.PI * depthM)) }
}

/** Side of the picture [m of the shop]: a drum stands in it, a bucket looks small. */
const SIDE_M = 0.6
const SIDE_PX = 96

/** How big a bath is beside the others, all to one scale. */
export function TankPicture({ bath }: { readonly bath: Readonly<Record<string, string>> }) {
  const shape = tankShape(bath)
  if (shape === undefined) return <div class="tank-picture" />
  const scale = SIDE_PX / Math.max(SIDE_M, shape.depthM * 1.15, shape.acrossM * 1.1)
  const width = shape.acrossM * scale
  const depth = shape.depthM * scale
  const left = (SIDE_PX - width) / 2
  const bottom = SIDE_PX - 3
  return (
    <svg class="tank-picture" viewBox={`0 0 ${SIDE_PX} ${SIDE_PX}`} aria-hidden="true">
      <rect x={left} y={bottom - depth} width={width} height={depth} fill="var(--bath)" />
      <path d={`M${left} ${bottom - depth}H${left + width}`} stroke="var(--bath-line)" stroke-width="2" />
      <path
        d={`M${left} ${bottom - depth * 1.12}V${bottom}H${left + width}V${bottom - depth * 1.12}`}
        fill="none"
        stroke="var(--ink)"
        stroke-width="2.5"
      />
    </svg>
  )
}
