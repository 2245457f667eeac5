import { foundAgainstForecast } from '#report/found-against-forecast.ts'
import { betweenSourcesText, figure, percent, signed } from '#report/validation-reach.ts'
import { bandMet, type CheckSummary, errorMet } from '#report/validation-record.ts'
import { type CheckShown, errorText } from './check-in-units.ts'
import { MetMark } from './met-mark.tsx'

/** One set of published figures: how far off, why, the picture, and the splits and sources for who wants them. */
export function CheckView({ check }: { readonly check: CheckShown }) {
  const { id, name, unit, aim, all, says, whyMissed, whyOutside, inSample, rows, valueUnit, relative, sources } = check
  const met = errorMet(check)
  const between = betweenSourcesText(check)
  const parts = [
    ...(check.fitted === undefined ? [] : [{ ...check.fitted, name: 'figures it was fitted to, which do not count' }]),
    ...check.families,
    ...check.groups,
    ...check.provenances.map((each) => ({ ...each, name: `read: ${each.name}` })),
  ]
  return (
    <section class="proof-check" id={id} aria-labelledby={`${id}-name`}>
      <div class="proof-words">
        <h3 id={`${id}-name`}>{name}</h3>
        <p class="proof-verdict">
          <MetMark met={met} /> <strong>{errorText(all.meanAbsolute, unit)}</strong> off on average over {all.n} figures; aim{' '}
          {errorText(aim, unit)}
          {inSample === true ? ', on figures that it was fitted to' : ''}.
        </p>
        {all.inside !== undefined && (
          <p class="proof-verdict">
            <MetMark met={bandMet(all) ?? true} /> The band holds <strong>{percent(all.inside)}</strong> of them; nine in ten are
            meant.
          </p>
        )}
        {whyMissed !== undefined && (
          <p>
            <span class="strong">Why it is missed.</span> {whyMissed}
          </p>
        )}
        {whyOutside !== undefined && (
          <p>
            <span class="strong">Why the band does not.</span> {whyOutside}
          </p>
        )}
        {between !== undefined && (
          <p>
            <span class="strong">Sources against each other.</span> {between}
          </p>
        )}
        <p class="soft">{says}</p>
        {parts.length > 0 && (
          <details>
            <summary>By kind, by steel, by how it was read</summary>
            <Parts of={name} parts={parts} unit={unit} />
          </details>
        )}
        <details>
          <summary>Where the figures are from ({sources.length})</summary>
          <ul class="proof-sources">
            {sources.map((source) => (
              <li key={source}>{source}</li>
            ))}
          </ul>
        </details>
      </div>
      {rows === undefined ? (
        <p class="proof-none soft">
          No picture: these figures may be used for checking and not be passed on. Only the summary is kept here.
        </p>
      ) : (
        <figure class="proof-picture">
          <div
            dangerouslySetInnerHTML={{
              __html: foundAgainstForecast({
                id: `${id}-picture`,
                title: `${name}: published and forecast`,
                unit: valueUnit,
                rows,
                logarithmic: relative,
              }),
            }}
          />
        </figure>
      )}
    </section>
  )
}

function Parts({ of, parts, unit }: { readonly of: string; readonly parts: readonly CheckSummary[]; readonly unit: string }) {
  const banded = parts.some(({ inside }) => inside !== undefined)
  return (
    // It may be wider than a phone; what scrolls is reached by keyboard too.
    // biome-ignore lint/a11y/noNoninteractiveTabindex: see above
    <section class="proof-scroll" aria-label={`${of}: its parts`} tabIndex={0}>
      <table class="proof-parts">
        <thead>
          <tr>
            <th scope="col">Of them</th>
            <th scope="col">Figures</th>
            <th scope="col">Off by, {unit}</th>
            <th scope="col">Leaning</th>
            {banded && <th scope="col">Band holds</th>}
            <th scope="col">Furthest off</th>
          </tr>
        </thead>
        <tbody>
          {parts.map(({ name, n, meanAbsolute, bias, inside, worst }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{n}</td>
              <td>{figure(meanAbsolute)}</td>
              <td>{signed(bias)}</td>
              {banded && <td>{inside === undefined ? '' : percent(inside)}</td>}
              <td class="proof-worst">{worst === undefined ? '' : `${signed(worst.error)}: ${worst.label}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
