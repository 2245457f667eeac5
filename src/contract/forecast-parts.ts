import { colourWindow } from '#engine/ensemble/colour-window.ts'
import { DEFAULT_MEMBERS, DEFAULT_SEED, forecastJob } from '#engine/ensemble/forecast.ts'
import { nodeHardness } from '#engine/ensemble/node-outlook.ts'
import type { Origin, Outlook, SpotOutlook, Spread } from '#engine/ensemble/outlook.ts'
import { cautionsOf } from '#engine/findings/cautions.ts'
import type { EngineFinding } from '#engine/findings/finding.ts'
import { accountOf } from '#engine/findings/findings.ts'
import { findingsIn } from '#engine/findings/rules.ts'
import type { MeshGrade } from '#engine/geometry/mesh.ts'
import { polylineOf } from '#engine/geometry/outline.ts'
import { criticalTemperatures } from '#engine/metallurgy/critical-temperatures.ts'
import type { Job } from '#engine/simulation/job.ts'
import { withStruckEnd } from '#engine/simulation/struck-end.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import type { Figure, Finding, Forecast } from './answers.ts'
import { coloursInFigures } from './colour-words.ts'
import { type ParseOptions, parseJob } from './parse-job.ts'
import type { Mends, Remedy } from './remedy-edits.ts'
import { crossSectionAnswers, sectionAssumptions } from './section-answer.ts'
import { skinAnswers, skinAssumptions } from './skin-answer.ts'
import { stepInShort } from './step-in-short.ts'
import { aimInWords, stepSays } from './step-words.ts'
import { temperCurveOf } from './temper-curve.ts'
import { wordingFor } from './wording.ts'

export interface ForecastRequest extends ParseOptions {
  /** Members of the ensemble; more give a steadier band. */
  readonly members?: number
  readonly seed?: number
  /** `sketch` follows a dragged handle, with a band but no members; `draft` answers in half a second. */
  readonly grade?: MeshGrade
  readonly units?: 'metric' | 'inch'
  /** Whether findings say what to try in the job; every grade but a sketch does unless told otherwise. */
  readonly remedies?: boolean
  /** Adds hardness over the whole cut piece, for pictures. */
  readonly field?: boolean
  readonly onProgress?: (done: number, total: number, says: string) => void
}

const ZERO_C_K = 273.15

/**
 * A forecast with what it was told from; `nodes` and a film in the treatment only when `pictured`. Who would have findings say what to try
 * hands in the `mends`: a page fetches them after its first sketch. Throws `InputProblems` on bad input.
 */
export function worked(
  job: unknown,
  request: ForecastRequest,
  pictured: boolean,
  mends: Mends | undefined,
): { readonly forecast: Forecast; readonly job: Job } & ReturnType<typeof forecastJob> {
  const parsed = parseJob(job, { ...request, process: 'required' })
  const asked = withStruckEnd(parsed.job)
  const grade = request.grade ?? 'normal'
  const found = forecastJob(asked, {
    grade,
    members: request.members ?? DEFAULT_MEMBERS[grade],
    seed: request.seed ?? DEFAULT_SEED,
    pictured,
    ...(request.onProgress === undefined ? {} : { onProgress: request.onProgress }),
  })
  const { treatment, outlook } = found
  return {
    ...found,
    job: asked,
    forecast: answerOf(asked, treatment, outlook, grade, parsed.assumptions, { ...request, document: job }, mends),
  }
}

/** Engine results in the words and units of the contract; with the `document` that they came from and `mends`, findings say what to try in it. */
export function answerOf(
  job: Job,
  treatment: Treatment,
  outlook: Outlook,
  grade: MeshGrade,
  assumed: readonly { says: string; because: string }[],
  request: Pick<ForecastRequest, 'units' | 'field' | 'remedies'> & { readonly document?: unknown },
  mends?: Mends,
): Forecast {
  const wording = wordingFor(request.units ?? 'metric')
  const critical = criticalTemperatures(
    job.steel.composition,
    job.steel.gradeId === undefined ? {} : { gradeId: job.steel.gradeId },
  )
  const { body, records, trace } = treatment
  const temperCurve = temperCurveOf(job, treatment, outlook, critical.ac1K.value)
  const account = accountOf({ job, treatment, outlook })
  // A sketch follows a hand; what to try is offered when it rests.
  const mendsOf =
    request.document === undefined || !(request.remedies ?? grade !== 'sketch')
      ? undefined
      : mends?.({ job, treatment, outlook, account, document: request.document, units: request.units ?? 'metric' })
  const crossed = outlook.sections ?? []
  // A sketch looks into the skin only to tell whether it matters.
  const skins = grade === 'sketch' ? [] : (outlook.skins ?? [])
  const hrc = (spread: Spread, origin: Origin): Figure => figure(spread, origin, 1)
  const hv = (spread: Spread, origin: Origin): Figure => figure(spread, origin, 0)
  return {
    piece: job.piece,
    steel: job.steel.name,
    grade,
    members: outlook.members,
    seed: outlook.seed,
    steps: records.map((record, index) => {
      const asked = job.process[record.step]
      const times = asked !== undefined && 'times' in asked ? asked.times : 1
      const window = record.kind === 'run-colours' ? colourWindow(job, record, outlook) : undefined
      return {
        do: record.kind,
        ...(gearOf(record) === undefined ? {} : { in: gearOf(record) as string }),
        start_s: round(record.startS, 1),
        end_s: round(record.endS, 1),
        says: stepSays(record, times, wording, window),
        cautions: cautionsOf(record, wording),
        ...targetOf(record),
        ...endOf(trace.atEnds[index]),
        ...(times > 1 ? { times } : {}),
        ...(record.kind === 'run-colours' ? { colours: coloursInFigures(record, window, outlook.along) } : {}),
        inShort: stepInShort(record, times, wording),
      }
    }),
    probes: outlook.probes.map((at, i) => ({
      name: job.probes[i]?.name ?? '',
      x_mm: millimetres(at.spot.xM),
      r_mm: millimetres(at.spot.rM),
      peak_C: celsius(at.peakK),
      cooling_800_500_s: Number.isFinite(at.cooling800To500S) ? round(at.cooling800To500S, 2) : null,
      quenched_HRC: hrc(at.quenchedHrc, outlook.quenched),
      tempered_HRC: hrc(at.temperedHrc, outlook.tempered),
      quenched_HV: hv(at.quenchedHv, outlook.quenched),
      tempered_HV: hv(at.temperedHv, outlook.tempered),
      ...austeniteShare([at]),
    })),
    zones: outlook.zones.map((each) => ({
      name: each.zone.name,
      from_mm: millimetres(each.zone.fromM),
      to_mm: millimetres(each.zone.toM),
      aim: aimInWords(each.zone.aim),
      assumed: each.zone.assumed,
      quenched_HRC: hrc(each.quenchedHrc, outlook.quenched),
      tempered_HRC: hrc(each.temperedHrc, outlook.tempered),
      tempered_HV: hv(each.temperedHv, outlook.tempered),
      ...austeniteShare(each.spots),
      chance: round(each.chance, 3),
    })),
    findings: findingsIn(account, wording).map((each) => findingInContract(each, mendsOf?.(each) ?? [])),
    ...(skins.length === 0 ? {} : { skin: skinAnswers(skins, records, outlook) }),
    assumptions: [
      ...assumed.map(({ says, because }) => ({ says, because })),
      ...sectionAssumptions(job, crossed),
      JUDGED_TO,
      ...skinAssumptions(job, skins),
    ],
    sources: sourcesOf(outlook, critical),
    critical: { ac1_C: celsius(critical.ac1K.value), ac3_C: celsius(critical.ac3K.value), ms_C: celsius(critical.msK.value) },
    outline_mm: polylineOf(body.outline, 0.0005).map(({ xM, rM }): [number, number] => [millimetres(xM), millimetres(rM)]),
    length_mm: millimetres(body.lengthM),
    sections: sectionsOf(job),
    ...(crossed.length === 0 ? {} : { crossSections: crossSectionAnswers(crossed) }),
    baths: records.flatMap((record) =>
      record.kind === 'quench'
        ? [
            {
              step: record.step,
              name: record.bath.name,
              kind: record.bath.kind,
              start_C: celsius(record.bathStartK),
              end_C: celsius(record.bathEndK),
              line_mm: record.depthM === null ? null : millimetres(record.depthM),
            },
          ]
        : [],
    ),
    along: outlook.along.map(({ xM, skin, centre }) => ({
      x_mm: millimetres(xM),
      skin_quenched_HRC: hrc(skin.quenchedHrc, outlook.quenched),
      skin_tempered_HRC: hrc(skin.temperedHrc, outlook.tempered),
      centre_quenched_HRC: hrc(centre.quenchedHrc, outlook.quenched),
      centre_tempered_HRC: hrc(centre.temperedHrc, outlook.tempered),
    })),
    curves: {
      x_mm: millimetres(trace.xM),
      time_s: trace.timeS.map((s) => round(s, 2)),
      skin_C: trace.skinK.map(celsius),
      centre_C: trace.centreK.map(celsius),
    },
    ...(temperCurve === undefined ? {} : { temperCurve }),
    ...(request.field === true ? { field: fieldOf(job, treatment) } : {}),
  }
}

function gearOf(record: Treatment['records'][number]): string | undefined {
  switch (record.kind) {
    case 'carry':
      return undefined
    case 'temper':
      return record.oven?.name ?? record.fire?.name
    case 'quench':
    case 'warm-bath':
    case 'run-colours':
      return record.bath.name
    default:
      return record.fire.name
  }
}

/** What the steel, or the dial of the oven, is to come to. */
function targetOf(record: Treatment['records'][number]): { to_C?: number; at_C?: number } {
  switch (record.kind) {
    case 'temper':
      return { at_C: celsius(record.setK) }
    case 'run-colours':
      return { to_C: celsius(record.stopAtK) }
    case 'carry':
    case 'quench':
    case 'warm-bath':
      return {}
    default:
      return { to_C: celsius(record.toK) }
  }
}

function endOf(end: Treatment['trace']['atEnds'][number] | undefined): { skin_C?: number; centre_C?: number } {
  return end === undefined ? {} : { skin_C: celsius(end.skinK), centre_C: celsius(end.centreK) }
}

const JUDGED_TO = {
  says: 'A zone is judged from its skin down to 3 mm, or half way to the middle where that is less; a soft zone right through.',
  because: 'that is what a tool wears and bears on',
}

function sourcesOf(outlook: Outlook, critical: ReturnType<typeof criticalTemperatures>): string[] {
  return [
    ...new Set([
      `As quenched: ${outlook.quenched.source}`,
      `Tempered: ${outlook.tempered.source}`,
      `Ac1: ${critical.ac1K.source}`,
      `Ac3: ${critical.ac3K.source}`,
      `Ms: ${critical.msK.source}`,
    ]),
  ]
}

function findingInContract(finding: EngineFinding, remedies: readonly Remedy[]): Finding {
  const { id, severity, where, says, because, remedy, caution } = finding
  return {
    id,
    severity,
    ...(where === undefined
      ? {}
      : {
          where: {
            ...(where.xM === undefined ? {} : { x_mm: millimetres(where.xM) }),
            ...(where.zone === undefined ? {} : { zone: where.zone }),
            ...(where.step === undefined ? {} : { step: where.step }),
          },
        }),
    says,
    because,
    remedy,
    ...(remedies.length === 0
      ? {}
      : {
          try: remedies.map(({ says: tries, edits }) => ({
            says: tries,
            edits: edits.map((edit) => ({ ...edit, path: [...edit.path] })),
          })),
        }),
    ...(caution === undefined ? {} : { caution }),
  }
}

/** The sections as they were given, from the working end. */
function sectionsOf({ profile }: Job): NonNullable<Forecast['sections']> {
  let fromM = 0
  return profile.sections.map(({ shape, from, to, lengthM }) => {
    const section = {
      from_mm: millimetres(fromM),
      to_mm: millimetres(fromM + lengthM),
      shape,
      across_mm: [millimetres(from.acrossM), millimetres(to.acrossM)] as [number, number],
      ...(from.widthM === undefined || to.widthM === undefined
        ? {}
        : { width_mm: [millimetres(from.widthM), millimetres(to.widthM)] as [number, number] }),
    }
    fromM += lengthM
    return section
  })
}

/** Nominal hardness node by node. */
function fieldOf(job: Job, treatment: Treatment): NonNullable<Forecast['field']> {
  const { mesh } = treatment.body
  const { quenchedHrc, temperedHrc } = nodeHardness(job, treatment)
  return {
    x_mm: Array.from(mesh.xM, millimetres),
    r_mm: Array.from(mesh.rM, millimetres),
    triangles: Array.from(mesh.triangles),
    quenched_HRC: Array.from(quenchedHrc, (hrc) => round(hrc, 1)),
    tempered_HRC: Array.from(temperedHrc, (hrc) => round(hrc, 1)),
  }
}

function figure({ value, low, high }: Spread, { basis, source }: Origin, digits: number): Figure {
  return { value: round(value, digits), low: round(low, digits), high: round(high, digits), basis, source }
}

function celsius(kelvin: number): number {
  return round(kelvin - ZERO_C_K, 1)
}

function millimetres(m: number): number {
  return round(m * 1000, 3)
}

function round(value: number, digits: number): number {
  const scale = 10 ** digits
  return Math.round(value * scale) / scale
}

/** Less austenite than this is not told. */
const TOLD_SHARE = 0.02

/** What became of the austenite that the quench left, at the place with most of it. */
function austeniteShare(spots: readonly SpotOutlook[]): { austenite_share?: { quenched: number; left: number; fresh: number } } {
  const [most] = [...spots].sort((a, b) => b.retainedAusteniteFraction - a.retainedAusteniteFraction)
  if (most === undefined || most.retainedAusteniteFraction < TOLD_SHARE) return {}
  return {
    austenite_share: {
      quenched: round(most.retainedAusteniteFraction, 3),
      left: round(most.austeniteLeftFraction, 3),
      fresh: round(most.freshMartensiteFraction, 3),
    },
  }
}
