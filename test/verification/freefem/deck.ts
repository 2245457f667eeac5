/**
 * Writes a FreeFem++ script that solves one of the cases of `bench/cases` in its own way: quadratic elements, its own mesh and time
 * steps, enthalpy by Newton. Nothing of the program under test takes part but the numbers of the case.
 * Bodies of straight lines only; a bath with a standing level.
 */
export interface DeckCase {
  readonly outline: readonly (readonly [x_mm: number, r_mm: number])[]
  readonly density_kgPerM3: number
  readonly conductivity: readonly (readonly [number, number])[]
  readonly specificHeat: readonly (readonly [number, number])[]
  readonly start_C: number
  readonly air: { readonly T_C: number; readonly h: number; readonly emissivity: number }
  readonly bath: {
    readonly T_C: number
    readonly film: readonly (readonly [number, number])[]
    readonly level: readonly (readonly [number, number])[]
  }
  readonly end_s: number
  readonly probes: readonly { readonly name: string; readonly x_mm: number; readonly r_mm: number }[]
  readonly times_s: readonly number[]
}

/** How fine the script cuts: length of cells on the surface and on the axis [mm], and its steps: `firstS + growth * t`, at most `longestS`. */
export interface DeckSizes {
  readonly surfaceMm: number
  readonly axisMm: number
  readonly firstS: number
  readonly growth: number
  readonly longestS: number
}

const WET = 1
const DRY = 2
const AXIS = 3

export function freefemDeck(given: DeckCase, sizes: DeckSizes): string {
  const level = given.bath.level[0]![1]
  const borders: string[] = []
  const calls: string[] = []
  const addBorder = (a: readonly [number, number], b: readonly [number, number], label: number, cellMm: number): void => {
    const name = `b${borders.length}`
    const count = Math.max(2, Math.round(Math.hypot(b[0] - a[0], b[1] - a[1]) / cellMm))
    // Backward: the metal must lie to the left.
    borders.push(
      `border ${name}(s = 0, 1) { x = ${b[0] / 1000} + s * ${(a[0] - b[0]) / 1000}; y = ${b[1] / 1000} + s * ${(a[1] - b[1]) / 1000}; label = ${label}; }`,
    )
    calls.unshift(`${name}(${count})`)
  }
  for (let i = 0; i + 1 < given.outline.length; i++) {
    const a = given.outline[i]!
    const b = given.outline[i + 1]!
    if (a[0] < level && b[0] > level) {
      const share = (level - a[0]) / (b[0] - a[0])
      const at = [level, a[1] + share * (b[1] - a[1])] as const
      addBorder(a, at, WET, sizes.surfaceMm)
      addBorder(at, b, DRY, sizes.surfaceMm)
    } else addBorder(a, b, Math.max(a[0], b[0]) <= level ? WET : DRY, sizes.surfaceMm)
  }
  const last = given.outline[given.outline.length - 1]!
  addBorder(last, given.outline[0]!, AXIS, sizes.axisMm)

  return `// Written by test/verification/freefem/deck.ts
verbosity = 0;
real zero = 273.15, sb = 5.670374419e-8, rho = ${given.density_kgPerM3};
${tableFunction('conductivity', given.conductivity)}
${tableFunction('heat', given.specificHeat)}
${integralFunction('enthalpy', given.specificHeat)}
${tableFunction('film', given.bath.film)}
${borders.join('\n')}
mesh Th = buildmesh(${calls.join(' + ')});
fespace Vh(Th, P2);
Vh told, tmid, tnew, tstar, k, c, hstar, hold, hmid, hf;
real gamma = 2 - sqrt(2.), a1 = 1 / (gamma * (2 - gamma)), a2 = (1 - gamma)^2 / (gamma * (2 - gamma));
real airK = ${given.air.T_C} + zero, eps = ${given.air.emissivity};
real[int] times = [${given.times_s.join(', ')}];
told = ${given.start_C};
hold = enthalpy(told);
real t = 0, lastStep = 0;
int at = 0, steps = 0;
Vh tbefore = told;
cout << "unknowns " << Vh.ndof << endl;
func int solveStage(real[int] &start, real[int] &known, real scale) {
  tstar[] = start;
  for (int pass = 0; pass < 4; ++pass) {
    k = conductivity(tstar); c = heat(tstar); hstar = enthalpy(tstar); hf = film(tstar);
    varf lhs(d, v) = int2d(Th)(y * (rho * c * d * v + scale * k * (dx(d) * dx(v) + dy(d) * dy(v))))
      + int1d(Th, ${WET})(scale * y * hf * d * v)
      + int1d(Th, ${DRY})(scale * y * (${given.air.h} + 4 * eps * sb * (tstar + zero)^3) * d * v);
    varf rhs(d, v) = int2d(Th)(-y * rho * hstar * v - scale * y * k * (dx(tstar) * dx(v) + dy(tstar) * dy(v)))
      + int1d(Th, ${WET})(scale * y * hf * (${given.bath.T_C} - tstar) * v)
      + int1d(Th, ${DRY})(scale * y * (${given.air.h} * (${given.air.T_C} - tstar) + eps * sb * (airK^4 - (tstar + zero)^4)) * v);
    matrix A = lhs(Vh, Vh, solver = sparsesolver);
    real[int] b = rhs(0, Vh);
    b += known;
    real[int] d = A^-1 * b;
    tstar[] += d;
    real size = d.linfty;
    if (size < 2e-3) break;
  }
  return 0;
}
while (t < ${given.end_s} - 1e-9) {
  real step = min(real(${sizes.longestS}), ${sizes.firstS} + ${sizes.growth} * t);
  real left = times[at] - t;
  if (step > left * 0.999) step = left; else if (step > 0.5 * left) step = 0.5 * left;
  real scale = 0.5 * gamma * step;
  k = conductivity(told); hf = film(told);
  varf fromOld(d, v) = int2d(Th)(y * rho * hold * v - scale * y * k * (dx(told) * dx(v) + dy(told) * dy(v)))
    + int1d(Th, ${WET})(scale * y * hf * (${given.bath.T_C} - told) * v)
    + int1d(Th, ${DRY})(scale * y * (${given.air.h} * (${given.air.T_C} - told) + eps * sb * (airK^4 - (told + zero)^4)) * v);
  real[int] known = fromOld(0, Vh);
  real[int] guess = told[];
  if (lastStep > 0) { real f = gamma * step / lastStep; guess += f * told[]; guess -= f * tbefore[]; }
  solveStage(guess, known, scale);
  tmid = tstar; hmid = enthalpy(tmid);
  varf fromBoth(d, v) = int2d(Th)(y * rho * (a1 * hmid - a2 * hold) * v);
  real[int] known2 = fromBoth(0, Vh);
  real on = (1 - gamma) / gamma;
  guess = tmid[]; guess += on * tmid[]; guess -= on * told[];
  solveStage(guess, known2, scale);
  tbefore = told;
  told = tstar; hold = enthalpy(told);
  t += step; lastStep = step; steps++;
  if (abs(t - times[at]) < 1e-9) {
    t = times[at];
    cout.precision(9);
    cout << "row " << t${given.probes.map(({ x_mm, r_mm }) => ` << " " << told(${x_mm / 1000}, ${r_mm / 1000})`).join('')} << endl;
    if (at + 1 < times.n) at++;
  }
}
cout << "steps " << steps << endl;
`
}

type Rows = readonly (readonly [number, number])[]

/** A piecewise linear table as nested conditions. */
function tableFunction(name: string, rows: Rows): string {
  const first = rows[0]!
  const last = rows[rows.length - 1]!
  let body = String(last[1])
  for (let i = rows.length - 2; i >= 0; i--) {
    const [x0, y0] = rows[i]!
    const [x1, y1] = rows[i + 1]!
    body = `(u < ${x1} ? ${y0} + ${(y1 - y0) / (x1 - x0)} * (u - ${x0}) : ${body})`
  }
  return `func real ${name}(real u) { return u < ${first[0]} ? ${first[1]} : ${body}; }`
}

/** Its exact integral from the first row on. */
function integralFunction(name: string, rows: Rows): string {
  const first = rows[0]!
  const last = rows[rows.length - 1]!
  const areas = [0]
  for (let i = 0; i + 1 < rows.length; i++) {
    areas.push(areas[i]! + 0.5 * (rows[i]![1] + rows[i + 1]![1]) * (rows[i + 1]![0] - rows[i]![0]))
  }
  let body = `${areas[areas.length - 1]} + ${last[1]} * (u - ${last[0]})`
  for (let i = rows.length - 2; i >= 0; i--) {
    const [x0, y0] = rows[i]!
    const [x1, y1] = rows[i + 1]!
    body = `(u < ${x1} ? ${areas[i]} + (u - ${x0}) * (${y0} + ${(y1 - y0) / (x1 - x0) / 2} * (u - ${x0})) : ${body})`
  }
  return `func real ${name}(real u) { return u < ${first[0]} ? ${first[1]} * (u - ${first[0]}) : ${body}; }`
}
