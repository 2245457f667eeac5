import { Fragment } from 'preact'
import { allBands, percent, tableToReach } from '#report/validation-reach.ts'
import { INSIDE_AIM, type ValidationRecord } from '#report/validation-record.ts'
import type { System } from '#units/length.ts'
import { checkIn, errorText } from './check-in-units.ts'
import { MetMark } from './met-mark.tsx'

/** What was asked of the figures and how far they are from it, a row for each set of published figures. */
export function ReachTable({ record, units }: { readonly record: ValidationRecord; readonly units: System }) {
  const rows = tableToReach(record)
  const { n, inside } = allBands(record)
  return (
    <table class="proof-reach">
      <caption class="out-of-sight">Error and aim of each forecast, and whether its band holds</caption>
      <thead>
        <tr>
          <th scope="col">What is foretold</th>
          <th scope="col">Off by</th>
          <th scope="col">Aim</th>
          <th scope="col">Band holds</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ wish, check, met, bandMet }, i) => {
          const { id, name, unit, aim, all } = checkIn(check, units)
          return (
            <Fragment key={id}>
              {rows[i - 1]?.wish !== wish && (
                <tr>
                  <th scope="rowgroup" colSpan={4} class="proof-wish">
                    {wish}
                  </th>
                </tr>
              )}
              <tr>
                <th scope="row">
                  <a href={`#${id}`}>{name}</a>
                </th>
                <td>
                  <MetMark met={met} /> {errorText(all.meanAbsolute, unit)}
                </td>
                <td>{errorText(aim, '').trim()}</td>
                <td>
                  {all.inside === undefined ? (
                    <span class="soft">no band</span>
                  ) : (
                    <>
                      <MetMark met={bandMet ?? true} /> {percent(all.inside)}
                    </>
                  )}
                </td>
              </tr>
            </Fragment>
          )
        })}
        <tr>
          <th scope="rowgroup" colSpan={4} class="proof-wish">
            All bands together
          </th>
        </tr>
        <tr>
          <th scope="row">{n} published figures</th>
          <td />
          <td />
          <td>
            <MetMark met={inside >= INSIDE_AIM[0] && inside <= INSIDE_AIM[1]} /> {percent(inside)}
          </td>
        </tr>
      </tbody>
    </table>
  )
}
