import type { Composition } from '#engine/materials/steel.ts'

/** Kinds of steel, as far as a composition tells them apart. */
export type SteelFamily = 'plain carbon' | 'low alloy' | 'silicon steel' | 'high carbon' | 'rich tool steel' | 'high-speed'

/** By what governs hardening and tempering: carbides of tungsten and molybdenum, chromium, silicon, carbon, alloy. */
export function steelFamily({ C, Si, Cr, Ni, Mo, V, W }: Composition): SteelFamily {
  if (C > 0.6 && W + 2 * Mo > 10) return 'high-speed'
  if (Cr > 2.5 || W > 3) return 'rich tool steel'
  if (Si > 1.2) return 'silicon steel'
  if (C > 0.7) return 'high carbon'
  return Cr + Ni + 2 * Mo + V > 0.4 ? 'low alloy' : 'plain carbon'
}

/** Steels for tools: their Ms and hardness hang on what the heat dissolves of their carbide. */
export function isToolSteel(family: SteelFamily): boolean {
  return family === 'high carbon' || family === 'rich tool steel' || family === 'high-speed'
}
