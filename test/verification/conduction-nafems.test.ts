import { expect, test } from 'vitest'
import { runStage, type StageInput } from '#engine/conduction/stage.ts'
import { evenly, rectangleMesh } from './conduction-rectangle.ts'

/**
 * Thermal cases of The Standard NAFEMS Benchmarks (1990); targets T2 927 K (recomputed 926.97), T3 36.60 degC, T4 18.25 degC. All are plane,
 * so the mesh lies a hundred kilometres off the axis.
 *
 * A held temperature is a node of a material with endless heat capacity: exact, and nothing stiff for the step control.
 */
const FAR_M = 1e5
const RESERVOIR_DENSITY = 1e15
const NOTHING = { fluid: [[0, 300]], film: [[300, 0]], emissivity: 0 } as const
const kelvin = (celsius: number): number => celsius + 273.15

function held(
  mesh: StageInput['mesh'],
  isHeld: (x: number) => boolean,
  elseK: number,
  heldK: number,
): Pick<StageInput, 'materialOfNode' | 'temperatureK'> {
  return {
    materialOfNode: Uint8Array.from(mesh.xM, (x) => (isHeld(x) ? 1 : 0)),
    temperatureK: Float64Array.from(mesh.xM, (x) => (isHeld(x) ? heldK : elseK)),
  }
}

test('T2: a rod held at 1000 K at one end and radiating to 300 K at the other settles at 927 K there', () => {
  const steel = { densityKgPerM3: 7850, conductivity: [[300, 55.563]], specificHeat: [[300, 460]] } as const
  const mesh = rectangleMesh(evenly(0, 0.1, 20), evenly(FAR_M, FAR_M + 0.01, 2), ['high x'])
  const outcome = runStage({
    mesh,
    materials: [steel, { ...steel, densityKgPerM3: RESERVOIR_DENSITY }],
    ...held(mesh, (x) => x === 0, 1000, 1000),
    surroundings: { covered: NOTHING, rest: { ...NOTHING, emissivity: 0.98 }, fromM: 1, level: [[0, 0]] },
    endS: 20000,
    toleranceK: 0.1,
  })
  const ends = Array.from(outcome.temperatureK.slice(-3))
  for (const endK of ends) expect(Math.abs(endK - 926.97)).toBeLessThan(0.3)
})

test('T3: a bar with one end at 100 sin(pi t / 40) degC has 36.60 degC 20 mm from it after 32 s', () => {
  const bar = { densityKgPerM3: 7200, conductivity: [[300, 35]], specificHeat: [[300, 440.5]] } as const
  const mesh = rectangleMesh(evenly(0, 0.1, 50), evenly(FAR_M, FAR_M + 0.004, 2), ['high x'])
  const sine = evenly(0, 32, 128).map((timeS) => [timeS, kelvin(100 * Math.sin((Math.PI * timeS) / 40))] as const)
  const outcome = runStage({
    mesh,
    materials: [bar, { ...bar, densityKgPerM3: RESERVOIR_DENSITY }],
    ...held(mesh, (x) => x === 0, kelvin(0), kelvin(0)),
    // A held temperature that moves can't be a reservoir: it is a film that no flux here pulls further than 0.02 K from its fluid.
    surroundings: { covered: NOTHING, rest: { fluid: sine, film: [[300, 1e7]], emissivity: 0 }, fromM: 1, level: [[0, 0]] },
    endS: 32,
    toleranceK: 0.02,
  })
  const atM = mesh.xM.findIndex((x) => Math.abs(x - 0.08) < 1e-9)
  // 0.5 % of the target.
  expect(Math.abs(outcome.temperatureK[atM]! - kelvin(36.6))).toBeLessThan(0.18)
})

test('T4: a plate held at 100 degC below and cooled to 0 degC right and above settles at 18.25 degC at (0.6, 0.2)', () => {
  const plate = { densityKgPerM3: 7850, conductivity: [[300, 52]], specificHeat: [[300, 460]] } as const
  // x is the height of the plate here, r its width; finer toward the corner where 100 degC meets the cooled side.
  const heights = [0, 0.005, 0.01, 0.02, 0.03, 0.045, 0.06, 0.08, 0.1, 0.12, 0.14, 0.16, 0.18, ...evenly(0.2, 1, 26)]
  const widths = [...evenly(0, 0.4, 14), 0.43, 0.46, 0.485, 0.51, 0.53, 0.55, 0.565, 0.58, 0.59, 0.595, 0.6].map((y) => FAR_M + y)
  const mesh = rectangleMesh(heights, widths, ['outer', 'high x'])
  const outcome = runStage({
    mesh,
    materials: [plate, { ...plate, densityKgPerM3: RESERVOIR_DENSITY }],
    ...held(mesh, (x) => x === 0, kelvin(20), kelvin(100)),
    surroundings: {
      covered: NOTHING,
      rest: { fluid: [[0, kelvin(0)]], film: [[300, 750]], emissivity: 0 },
      fromM: 2,
      level: [[0, 0]],
    },
    endS: 3e5,
    toleranceK: 0.05,
  })
  const at = mesh.xM.findIndex((x, i) => Math.abs(x - 0.2) < 1e-9 && mesh.rM[i]! > FAR_M + 0.5999)
  // 0.5 % of the target.
  expect(Math.abs(outcome.temperatureK[at]! - kelvin(18.25))).toBeLessThan(0.09)
})
