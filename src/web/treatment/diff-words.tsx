import type { Finding } from '#contract/answers.ts'
import { formatDuration } from '#units/duration.ts'
import { SeverityMark } from '#web/look/severity-mark.tsx'
import { ChanceTally } from './chance-tally.tsx'
import { chanceTurn, type ForecastDiff, turnOf } from './forecast-diff.ts'

const TURN_MARKS = { better: '\u25b2', worse: '\u25bc', same: '=' } as const

interface DiffWordsProps {
  readonly diff: ForecastDiff
  /** From sketches: what they find is not told, as a full answer may well find otherwise. */
  readonly rough: boolean
}

/** What a change comes to: the chance of every zone before and after, what is found anew and what no longer is, and the time. */
export function DiffWords({ diff, rough }: DiffWordsProps) {
  const [beforeS, afterS] = diff.timeS
  const longer = Math.round((afterS - beforeS) / 60)
  return (
    <ul class="diff-words">
      {diff.zones.map((zone) => {
        const turn = turnOf(zone)
        return (
          <li key={zone.name}>
            <span class="diff-mark" aria-hidden="true">
              {turn === undefined ? '' : TURN_MARKS[turn]}
            </span>
            <span>
              <strong>{zone.name}</strong>: chance {chanceTurn(zone)}
              {hardnessTurn(zone)}
              {zone.after !== undefined && <ChanceTally chance={zone.after.chance} was={zone.before?.chance} />}
            </span>
          </li>
        )
      })}
      {(rough ? [] : diff.gained).map((finding) => (
        <FindingTurn key={`+${finding.id}${finding.says}`} finding={finding} turn="found anew" />
      ))}
      {(rough ? [] : diff.lost).map((finding) => (
        <FindingTurn key={`-${finding.id}${finding.says}`} finding={finding} turn="gone" />
      ))}
      {Math.abs(longer) >= 1 && (
        <li>
          <span class="diff-mark" aria-hidden="true" />
          <span>
            {formatDuration(Math.abs(longer) * 60)} {longer > 0 ? 'longer' : 'shorter'} from the first fire to the last cooling
          </span>
        </li>
      )}
    </ul>
  )
}

function hardnessTurn({ before, after }: ForecastDiff['zones'][number]): string {
  if (before === undefined || after === undefined) return ''
  const [was, is] = [before.hrc, after.hrc].map(hardnessWords)
  return was === is ? ` (${is})` : ` (${is}, was ${was})`
}

/** Below this the scale says nothing. */
const SOFTEST_HRC = 20

function hardnessWords(hrc: number): string {
  return hrc < SOFTEST_HRC ? `under ${SOFTEST_HRC} HRC` : `${Math.round(hrc)} HRC`
}

function FindingTurn({ finding, turn }: { readonly finding: Finding; readonly turn: 'found anew' | 'gone' }) {
  return (
    <li class={turn === 'gone' ? 'diff-gone' : 'diff-new'}>
      <SeverityMark severity={finding.severity} />
      <span>
        <strong>{turn === 'gone' ? 'Gone' : 'New'}</strong>: <span class="diff-finding">{finding.says}</span>
      </span>
    </li>
  )
}
