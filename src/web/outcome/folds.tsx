import type { Forecast } from '#contract/answers.ts'
import type { System } from '#units/length.ts'
import { readAustenite } from './austenite-reading.ts'
import { Fold } from './fold.tsx'
import { grindOffMm, type Skin } from './grind.ts'
import { readSections, sectionsBetween } from './section-reading.ts'
import { SkinPlot } from './skin-plot.tsx'
import { readSkin } from './skin-reading.ts'

/** What to grind off, what a file will say, what the fires took. */
export function SkinFold({ skin, units }: { readonly skin: Skin; readonly units: System }) {
  const { short, says } = readSkin(skin, units)
  return (
    <Fold short={short}>
      {says.map((each) => (
        <p key={each}>{each}</p>
      ))}
      {grindOffMm(skin) !== undefined && <SkinPlot skin={skin} units={units} />}
      <p class="soft">Forging heats and the bark of the bar are not counted.</p>
    </Fold>
  )
}

export interface SectionFoldProps {
  readonly forecast: Forecast
  /** The length that is asked about. */
  readonly within: { readonly from_mm: number; readonly to_mm: number }
  readonly units: System
}

/** Corner, face and middle of the true sections that were solved on a length; nothing where there are none. */
export function SectionFold({ forecast, within: { from_mm, to_mm }, units }: SectionFoldProps) {
  const reading = readSections(sectionsBetween(forecast, from_mm, to_mm), units)
  if (reading === undefined) return null
  return (
    <Fold short={reading.short}>
      <table class="outcome-table">
        <caption>HRC after tempering, and from what</caption>
        <thead>
          <tr>
            <th scope="col">At</th>
            <th scope="col">Corner</th>
            <th scope="col">Face</th>
            <th scope="col">Middle</th>
          </tr>
        </thead>
        <tbody>
          {reading.rows.map(({ at, cells }) => (
            <tr key={at}>
              <th scope="row">{at}</th>
              {cells.map(({ hrc, from }, i) => (
                <td key={i}>
                  <span class="strong">{hrc}</span>
                  {from !== undefined && <span class="soft"> from {from}</span>}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {reading.says.map((each) => (
        <p key={each} class="soft">
          {each}
        </p>
      ))}
    </Fold>
  )
}

/** What stayed soft in the quench, where it matters. */
export function AusteniteFold({ share }: { readonly share: Forecast['zones'][number]['austenite_share'] }) {
  const reading = readAustenite(share)
  if (reading === undefined) return null
  return (
    <Fold short={reading.short}>
      {reading.says.map((each) => (
        <p key={each}>{each}</p>
      ))}
    </Fold>
  )
}
