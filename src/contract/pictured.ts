import type { NodeOutlook } from '#engine/ensemble/node-outlook.ts'
import type { Job } from '#engine/simulation/job.ts'
import type { Treatment } from '#engine/simulation/treatment.ts'
import { celsiusFromKelvin } from '#units/temperature.ts'
import type { Forecast } from './answers.ts'
import { type ForecastRequest, worked } from './forecast-parts.ts'
import { type Picture, STRUCTURES, type Structure } from './picture-fields.ts'
import type { Mends } from './remedy-edits.ts'
import { skinOf } from './skin-colours.ts'

/** As `forecastWithPicture`; findings say what to try only with `mends`. */
export function pictured(
  job: unknown,
  request: ForecastRequest,
  mends: Mends | undefined,
): { readonly forecast: Forecast; readonly picture: Picture } {
  const { forecast, job: asked, treatment, nodes } = worked(job, request, true, mends)
  if (nodes === undefined) throw new Error('picture: the forecast came without its nodes')
  return { forecast, picture: pictureOf(asked, treatment, nodes) }
}

function pictureOf({ steel }: Job, treatment: Treatment, nodes: NodeOutlook): Picture {
  const { body, state, film } = treatment
  if (film === undefined) throw new Error('picture: the treatment was not filmed')
  const { mesh } = body
  const n = mesh.xM.length
  const temperatureC = new Float32Array(film.timeS.length * n)
  film.temperatureK.forEach((kelvin, frame) => {
    temperatureC.set(kelvin.map(celsiusFromKelvin), frame * n)
  })
  return {
    xMm: Float32Array.from(mesh.xM, (m) => 1000 * m),
    rMm: Float32Array.from(mesh.rM, (m) => 1000 * m),
    triangles: mesh.triangles.slice(),
    surfaceNodes: mesh.boundaryNode.slice(),
    timeS: Float64Array.from(film.timeS),
    step: Uint16Array.from(film.step),
    temperatureC,
    levelMm: Float32Array.from(film.levelM, (m) => 1000 * m),
    quenchedHrc: Float32Array.from(nodes.quenchedHrc),
    temperedHrc: Float32Array.from(nodes.temperedHrc),
    bandHrc: Float32Array.from(nodes.bandHrc),
    structure: Uint8Array.from(nodes.austeniteFraction, (austenite, i) =>
      STRUCTURES.indexOf(structureOf(austenite, nodes.martensiteFraction[i] as number)),
    ),
    martensiteShare: Float32Array.from(nodes.martensiteFraction),
    ferriteShare: Float32Array.from(nodes.ferriteFraction),
    pearliteShare: Float32Array.from(nodes.pearliteFraction),
    bainiteShare: Float32Array.from(nodes.bainiteFraction),
    peakC: Float32Array.from(state.peakK, celsiusFromKelvin),
    cooling800To500S: Float32Array.from(state.coolingS, (s) => (Number.isFinite(s) ? s : Number.NaN)),
    skin: skinOf(treatment, steel.composition),
  }
}

/** Under this share nothing has turned; over that, all has. What the engine gives near its ends is within its own scatter. */
const NOTHING = 0.02
const ALL_TURNED = 0.95
/** Of what turned: from here on it counts as hardened through, and below as soft. */
const HARDENED = 0.9
const SOFT = 0.1

function structureOf(austenite: number, martensite: number): Structure {
  if (austenite < NOTHING) return 'as before the heat'
  if (austenite < ALL_TURNED) return 'part-way heated'
  const share = martensite / austenite
  return share >= HARDENED ? 'hardened' : share >= SOFT ? 'part hardened' : 'soft after heating'
}
