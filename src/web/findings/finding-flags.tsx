import './findings.css'
import { useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import type { Forecast } from '#contract/answers.ts'
import type { Bench } from '#web/bench/bench.ts'
import { bodyOfText } from '#web/drawing/body.ts'
import type { Heights } from '#web/drawing/heights.ts'
import { SeverityMark } from '#web/look/severity-mark.tsx'
import { Sheet } from '#web/look/sheet.tsx'
import { FindingPanel } from './finding-panel.tsx'
import { type PlacedFinding, placedFindings } from './finding-places.ts'
import { FindingsList } from './findings-list.tsx'
import { flagLayout } from './flag-layout.ts'
import { FlagLeaders } from './flag-leaders.tsx'
import { followFindings } from './follow.ts'

/** Two lines and the room about them [px]. */
const FLAG_PX = 52
const GAP_PX = 4

/** What was found, each at its height on the piece, with a line to the metal. */
export function FindingFlags({ bench, heights }: { readonly bench: Bench; readonly heights: Heights }) {
  useEffect(() => followFindings(bench), [bench])
  const column = useRef<HTMLDivElement>(null)
  const forecast = bench.outlook.answered.value?.forecast
  return (
    <section class="finding-flags" ref={column} aria-label="Found" data-stale={bench.outlook.stale.value}>
      {forecast === undefined ? (
        <Waiting bench={bench} />
      ) : (
        <Flags bench={bench} heights={heights} forecast={forecast} column={column} />
      )}
    </section>
  )
}

/** Nothing is found where nothing has been worked out. */
function Waiting({ bench }: { readonly bench: Bench }) {
  const problems = bench.outlook.problems.value.length
  if (bench.outlook.untreated.value) return <p class="soft">Without a treatment nothing is found. Propose one, or write one.</p>
  if (problems > 0) return <p class="soft">Nothing can be found until what is written can be read.</p>
  return <p class="soft">Looking ...</p>
}

interface FlagsProps {
  readonly bench: Bench
  readonly heights: Heights
  readonly forecast: Forecast
  readonly column: { readonly current: HTMLElement | null }
}

function Flags({ bench, heights, forecast, column }: FlagsProps) {
  const placed = placedFindings(forecast)
  const { flags, left, leftTopPx } = flagLayout(placed, {
    heightPx: heights.heightPx,
    flagPx: FLAG_PX,
    gapPx: GAP_PX,
    yOf: heights.yOf,
  })
  const selection = bench.selection.value
  const opened = selection?.kind === 'finding' ? placed.find(({ index }) => index === selection.index) : undefined
  const allShown = useSignal(false)
  const close = (): void => {
    const index = opened?.index
    bench.selection.value = undefined
    column.current?.querySelector<HTMLElement>(`[data-finding="${index}"]`)?.focus()
  }
  if (placed.length === 0)
    return (
      <p class="flag-quiet">
        <strong>Nothing stands against it.</strong> Do the steps as they are written, and prove it with a file.
      </p>
    )
  return (
    <>
      <FlagLeaders
        forecast={forecast}
        body={bodyOfText(bench.job.value)}
        heights={heights}
        flags={flags}
        flagPx={FLAG_PX}
        opened={opened?.index}
        column={column}
      />
      <ul class="flag-list">
        {flags.map(({ placed: each, topPx, anchorPx }) => (
          <li key={each.index} style={{ top: `${topPx}px` }}>
            <FlagButton bench={bench} placed={each} pointing={anchorPx !== undefined} open={each === opened} />
          </li>
        ))}
        {leftTopPx !== undefined && (
          <li style={{ top: `${leftTopPx}px` }}>
            <button type="button" class="flag note" onClick={() => (allShown.value = true)}>
              <span class="flag-says">
                {left.length} more: {left[0]?.finding.says}
              </span>
            </button>
          </li>
        )}
      </ul>
      {opened !== undefined && (
        <FindingPanel bench={bench} placed={opened} forecast={forecast} heights={heights} onClose={close} />
      )}
      {allShown.value && (
        <Sheet title="Found" onClose={() => (allShown.value = false)}>
          <FindingsList bench={bench} />
        </Sheet>
      )}
    </>
  )
}

interface FlagButtonProps {
  readonly bench: Bench
  readonly placed: PlacedFinding
  readonly pointing: boolean
  readonly open: boolean
}

function FlagButton({ bench, placed: { finding, index }, pointing, open }: FlagButtonProps) {
  return (
    <button
      type="button"
      class={`flag ${finding.severity}`}
      data-finding={index}
      data-pointing={pointing}
      aria-expanded={open}
      onClick={() => {
        bench.selection.value = open ? undefined : { kind: 'finding', index }
      }}
    >
      <SeverityMark severity={finding.severity} />
      <span class="flag-says">{finding.says}</span>
    </button>
  )
}
