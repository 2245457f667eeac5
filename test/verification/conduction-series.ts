/**
 * Exact temperatures of plate, long cylinder and sphere that start even and meet a fluid through a constant film: the classic
 * series (Carslaw & Jaeger, Conduction of Heat in Solids, 2nd ed. 1959, sections 3.11, 7.7, 9.4). Roots and Bessel functions
 * are worked out here, so that nothing of the program under test takes part.
 */
export type SeriesShape = 'plate' | 'cylinder' | 'sphere'

/** J_n by its integral; the trapezium rule on a full period is exact to rounding for x below 100. */
function bessel(n: number, x: number): number {
  const points = 100
  let sum = 0
  for (let i = 0; i < points; i++) {
    const angle = (Math.PI * (2 * i + 1)) / (2 * points)
    sum += Math.cos(n * angle - x * Math.sin(angle))
  }
  return sum / points
}

const conditions: { readonly [shape in SeriesShape]: (z: number, biot: number) => number } = {
  plate: (z, biot) => z * Math.sin(z) - biot * Math.cos(z),
  cylinder: (z, biot) => z * bessel(1, z) - biot * bessel(0, z),
  sphere: (z, biot) => (1 - biot) * Math.sin(z) - z * Math.cos(z),
}

/** The first `count` positive roots, by scanning and halving. */
export function roots(shape: SeriesShape, biot: number, count: number): number[] {
  const f = conditions[shape]
  const found: number[] = []
  const stride = 0.05
  for (let z = 1e-6; found.length < count; z += stride) {
    if (Math.sign(f(z, biot)) === Math.sign(f(z + stride, biot))) continue
    let low = z
    let high = z + stride
    for (let halving = 0; halving < 60; halving++) {
      const middle = (low + high) / 2
      if (Math.sign(f(middle, biot)) === Math.sign(f(low, biot))) low = middle
      else high = middle
    }
    found.push((low + high) / 2)
  }
  return found
}

/** Factor of the term of root z. */
export function amplitude(shape: SeriesShape, z: number): number {
  if (shape === 'plate') return (4 * Math.sin(z)) / (2 * z + Math.sin(2 * z))
  if (shape === 'sphere') return (4 * (Math.sin(z) - z * Math.cos(z))) / (2 * z - Math.sin(2 * z))
  const j0 = bessel(0, z)
  const j1 = bessel(1, z)
  return (2 * j1) / (z * (j0 * j0 + j1 * j1))
}

/** How the term of root z varies over the body; `place` is 0 in the middle and 1 on the surface. */
export function mode(shape: SeriesShape, z: number, place: number): number {
  const x = z * place
  if (shape === 'plate') return Math.cos(x)
  if (shape === 'cylinder') return bessel(0, x)
  return x < 1e-9 ? 1 : Math.sin(x) / x
}

/** Share of the start difference that is left, (T - T_fluid) / (T_start - T_fluid); twelve terms suffice from Fourier number 0.02 on. */
export function seriesShare(shape: SeriesShape, biot: number, fourier: number, place: number): number {
  return roots(shape, biot, 12).reduce(
    (sum, z) => sum + amplitude(shape, z) * Math.exp(-z * z * fourier) * mode(shape, z, place),
    0,
  )
}
