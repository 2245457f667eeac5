import type { RoutePicture } from './route-picture.ts'

/** The piece of a route over its bath, and its hardness along it against the aims. */
export function RouteDrawing({ picture, says }: { readonly picture: RoutePicture; readonly says: string }) {
  const { widthPx, heightPx, axisPx, plotTopPx, plotBottomPx, water } = picture
  return (
    <svg class="route-drawing" viewBox={`0 0 ${widthPx} ${heightPx}`} role="img" aria-label={says}>
      {water !== undefined && (
        <>
          <rect class="route-bath" x="0" y={water.yPx} width={axisPx * 2} height={heightPx - water.yPx} />
          <path class="route-water" d={`M0 ${water.yPx}H${axisPx * 2}`} />
        </>
      )}
      {picture.ticks.map(({ xPx, hrc }) => (
        <g key={hrc}>
          <path class="route-grid" d={`M${xPx} ${plotTopPx}V${plotBottomPx}`} />
          <text class="route-figure" x={xPx} y={plotBottomPx + 16} text-anchor="middle">
            {hrc}
          </text>
        </g>
      ))}
      <text class="route-figure" x={widthPx - 4} y={plotBottomPx + 32} text-anchor="end">
        HRC
      </text>
      {picture.aims.map(({ name, leftPx, widthPx: wide, topPx, heightPx: tall }) => (
        <rect key={name} class="route-aim" x={leftPx} y={topPx} width={wide} height={tall} />
      ))}
      <path class="route-band" d={picture.band} />
      <path class="route-centre" d={picture.centre} />
      <path class="route-skin" d={picture.skin} />
      <path class="route-piece" d={picture.piece} />
      <path class="route-axis" d={`M${axisPx} ${plotTopPx - 8}V${plotBottomPx + 8}`} />
      {picture.parts.map(({ kind, fromPx, toPx }) => (
        <path key={`${kind}${toPx}`} class={`route-part ${kind}`} d={`M8 ${fromPx}H4V${toPx}H8`} />
      ))}
    </svg>
  )
}
