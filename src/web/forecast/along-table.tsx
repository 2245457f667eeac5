import type { Figure, Forecast } from '#contract/answers.ts'
import { formatLength, type System } from '#units/length.ts'
import { chanceSays } from './aims.ts'

/** The same figures for who does not see the curves: every fourth height, and the zones. */
export function AlongTable({
  forecast,
  units,
}: {
  readonly forecast: Pick<Forecast, 'along' | 'zones'>
  readonly units: System
}) {
  const rows = forecast.along.filter((_, i, all) => i % 4 === 0 || i === all.length - 1)
  const cell = ({ value, low, high }: Figure): string => `${Math.round(value)} (${Math.round(low)} to ${Math.round(high)})`
  return (
    <div class="out-of-sight">
      <table>
        <caption>Hardness along the piece in HRC, with the band that holds nine in ten</caption>
        <thead>
          <tr>
            <th scope="col">From the working end</th>
            <th scope="col">Skin quenched</th>
            <th scope="col">Skin tempered</th>
            <th scope="col">Middle quenched</th>
            <th scope="col">Middle tempered</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.x_mm}>
              <th scope="row">{formatLength(row.x_mm / 1000, units)}</th>
              <td>{cell(row.skin_quenched_HRC)}</td>
              <td>{cell(row.skin_tempered_HRC)}</td>
              <td>{cell(row.centre_quenched_HRC)}</td>
              <td>{cell(row.centre_tempered_HRC)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ul>
        {forecast.zones.map(({ name, aim, chance, tempered_HRC }) => (
          <li key={name}>
            {name}: aim {aim}, tempered {cell(tempered_HRC)} HRC, chance {chanceSays(chance)}
          </li>
        ))}
      </ul>
    </div>
  )
}
