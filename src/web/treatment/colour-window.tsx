import './colour-window.css'
import type { ColourReading } from './colour-reading.ts'

const WIDE = 300
const HIGH = 66
const LEFT = 4
const RIGHT = WIDE - 4
const TOP = 22
const FOOT = 44

/** The seconds after the lift as a bar: where the working end is within its aim, and where the colour is stopped. */
export function ColourWindow({ reading }: { readonly reading: ColourReading }) {
  const { short, says, stopS, fromS, untilS, lastS } = reading
  const x = (s: number): number => LEFT + ((RIGHT - LEFT) * Math.min(s, lastS)) / lastS
  const [from, until, stop] = [x(fromS), x(untilS ?? lastS), x(stopS)]
  const anchor = stop < 40 ? 'start' : stop > WIDE - 40 ? 'end' : 'middle'
  return (
    <div class="colour-window">
      <p class="strong">{short}</p>
      <svg viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true">
        <rect class="colour-track" x={LEFT} y={TOP} width={RIGHT - LEFT} height={FOOT - TOP} />
        <rect class="colour-good" x={from} y={TOP} width={Math.max(2, until - from)} height={FOOT - TOP} />
        <line class="colour-stop" x1={stop} x2={stop} y1={TOP - 4} y2={FOOT + 4} />
        <text class="colour-text" x={stop} y={TOP - 8} text-anchor={anchor}>
          stop
        </text>
        <text class="colour-text" x={LEFT} y={FOOT + 18}>
          lift
        </text>
        <text class="colour-text" x={Math.min(RIGHT, Math.max((from + until) / 2, 90))} y={FOOT + 18} text-anchor="middle">
          within its aim
        </text>
      </svg>
      {says.map((each) => (
        <p key={each}>{each}</p>
      ))}
    </div>
  )
}
