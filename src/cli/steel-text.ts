import type { Figure, SteelAnswer } from '#contract/answers.ts'
import { BASIS_WORDS, bandText, hardnessText, lengthOf, temperatureOf } from '#report/figure-text.ts'
import type { System } from '#units/length.ts'
import { trimmed } from '#units/length.ts'
import { clean, set, type Terminal, table } from './terminal.ts'

const TREATMENTS = [
  ['forge_C', 'forge'],
  ['normalise_C', 'normalise'],
  ['anneal_C', 'anneal'],
  ['austenitise_C', 'harden from'],
  ['temper_C', 'temper'],
] as const

/** A steel as a page to read: what it is, when it turns, how it is treated, what temper gives. */
export function steelText(
  steel: SteelAnswer,
  terminal: Terminal,
  { units, sources }: { readonly units: System; readonly sources: boolean },
): string {
  const { columns, strong, soft } = terminal
  const same = steel.alsoKnownAs.filter(({ near }) => !near).map(({ name, system }) => `${name} (${system})`)
  const near = steel.alsoKnownAs.filter(({ near }) => near).map(({ name, system }) => `${name} (${system})`)
  return [
    strong(clean(steel.name)),
    ...(same.length === 0 ? [] : [set(`Also sold as ${same.join(', ')}.`, columns)]),
    ...(near.length === 0 ? [] : [set(`Near, with other limits: ${near.join(', ')}.`, columns)]),
    '',
    strong('What is in it, per cent by weight'),
    table(
      ['', 'typical', 'limits'],
      Object.entries(steel.analysis_wtpct).map(([symbol, { value, low, high }]) => [
        symbol,
        trimmed(value, 3),
        low === high ? '' : `${trimmed(low, 3)} to ${trimmed(high, 3)}`,
      ]),
      terminal,
    ),
    '',
    strong('When it turns'),
    table(['', 'at', 'nine in ten', 'from'], criticals(steel, units), terminal),
    '',
    strong('How hard, how deep'),
    set(
      `Fully hardened ${hardnessText(steel.fullyMartensitic_HRC)} (${bandText(steel.fullyMartensitic_HRC)}), ${BASIS_WORDS[steel.fullyMartensitic_HRC.basis]}.`,
      columns,
    ),
    set(
      `Ideal diameter ${lengthOf(steel.idealDiameter_mm.value, units)} (${lengthOf(steel.idealDiameter_mm.low, units)} to ${lengthOf(steel.idealDiameter_mm.high, units)}): a bar this thick hardens half through in a perfect bath.`,
      columns,
    ),
    ...(steel.jominy.length === 0
      ? []
      : [
          table(
            ['end quench, from the end', 'hardness', 'nine in ten'],
            steel.jominy.map(({ distance_mm, hardness_HRC }) => [
              lengthOf(distance_mm, units),
              hardnessText(hardness_HRC),
              bandText(hardness_HRC),
            ]),
            terminal,
          ),
        ]),
    '',
    strong('How it is treated'),
    ...treatmentLines(steel, units, terminal),
    ...clashLines(steel, terminal),
    '',
    strong('What a temper gives'),
    table(
      ['at', 'for', 'hardness', 'nine in ten', 'from'],
      steel.temper.map(({ temperature_C, hold_h, times, hardness_HRC }) => [
        temperatureOf(temperature_C, units),
        `${trimmed(hold_h, 2)} h${times === undefined || times === 1 ? '' : ` x ${times}`}`,
        hardnessText(hardness_HRC),
        bandText(hardness_HRC),
        BASIS_WORDS[hardness_HRC.basis],
      ]),
      terminal,
    ),
    ...(steel.warnings.length === 0 ? [] : ['', strong('Mind'), ...steel.warnings.map((each) => set(`${each}`, columns, '- '))]),
    '',
    ...(steel.assumptions.length === 0
      ? []
      : [soft(set(`Taken for granted: ${steel.assumptions.map(({ says }) => says).join(' ')}`, columns))]),
    ...(sources
      ? ['', strong('Sources'), ...sourcesOf(steel).map((each) => set(`${each}`, columns, '- '))]
      : [soft('--sources names every source.')]),
  ].join('\n')
}

function criticals({ critical }: SteelAnswer, units: System): string[][] {
  const rows: [string, Figure | undefined][] = [
    ['Ac1, begins to turn', critical.ac1_C],
    ['Ac3, all turned', critical.ac3_C],
    ['Acm, carbides gone', critical.acm_C],
    ['Bs, bainite begins', critical.bs_C],
    ['Ms, hard structure begins', critical.ms_C],
    ['Mf, hard structure ends', critical.mf_C],
  ]
  return rows.flatMap(([name, figure]) =>
    figure === undefined
      ? []
      : [
          [
            name,
            temperatureOf(figure.value, units),
            `${temperatureOf(figure.low, units)} to ${temperatureOf(figure.high, units)}`,
            BASIS_WORDS[figure.basis],
          ],
        ],
  )
}

function treatmentLines({ treatment }: SteelAnswer, units: System, terminal: Terminal): string[] {
  const rows = TREATMENTS.flatMap(([key, name]) => {
    const item = treatment[key]
    return item === undefined ? [] : [[name, spanOf(item, units), BASIS_WORDS[item.basis], item.source]]
  })
  const others = TREATMENTS.flatMap(([key, name]) =>
    (treatment[key]?.all ?? []).map((item) => [
      name,
      spanOf(item, units),
      item.says === undefined ? item.source : `${item.says} (${item.source})`,
    ]),
  )
  return [
    table(['', 'between', 'basis', 'source'], rows, terminal),
    ...(others.length > rows.length
      ? ['', 'Where sources differ, side by side:', table(['', 'between', 'who says so'], others, terminal)]
      : []),
    ...[`Soak: ${treatment.soak}`, `Bath: ${treatment.baths.join(', ')}`, `Cycles: ${treatment.cycles}`].map((each) =>
      set(each, terminal.columns),
    ),
  ]
}

function spanOf({ from, to }: { readonly from: number; readonly to: number }, units: System): string {
  return from === to ? temperatureOf(from, units) : `${temperatureOf(from, units)} to ${temperatureOf(to, units)}`
}

function clashLines({ clashes }: SteelAnswer, { columns }: Terminal): string[] {
  return clashes.flatMap(({ what, figures }) => [
    '',
    set(`${what}: sources disagree`, columns),
    ...figures.map(({ says, source }) => set(`${says} (${source})`, columns, '- ')),
  ])
}

function sourcesOf(steel: SteelAnswer): string[] {
  const figures = [
    ...Object.values(steel.critical),
    ...Object.values(steel.analysis_wtpct),
    steel.idealDiameter_mm,
    steel.fullyMartensitic_HRC,
    ...steel.temper.map(({ hardness_HRC }) => hardness_HRC),
  ]
  return [...new Set(figures.flatMap((figure) => (figure === undefined ? [] : [figure.source])))]
}
