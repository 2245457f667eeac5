/**
 * Sines, cosines and angles that agree between runtimes: Math's own differ by a unit in the last place from one browser to the next, and a mesh
 * point that lies a hair further out may make another mesh. What they give is held to multiples of 2^-34 (6e-11): on a piece of a metre that is
 * less than an atom, and two runtimes part only where a value falls within a last place of a step, about one in a million.
 */
const STEPS = 17_179_869_184

function held(value: number): number {
  return Math.round(value * STEPS) / STEPS
}

export function sin(angleRad: number): number {
  return held(Math.sin(angleRad))
}

export function cos(angleRad: number): number {
  return held(Math.cos(angleRad))
}

export function tan(angleRad: number): number {
  return held(Math.tan(angleRad))
}

/** Angle of the point (x, y) [rad, -pi..pi]. */
export function atan2(y: number, x: number): number {
  return held(Math.atan2(y, x))
}

export function acos(cosine: number): number {
  return held(Math.acos(cosine))
}

export function asin(sine: number): number {
  return held(Math.asin(sine))
}
