import type { MeshPlan } from './mesh-plan.ts'

/**
 * Heat flow into every node by conduction [n, W]: over each edge conductance times mean conductivity times temperature difference.
 * What leaves one node enters the other to the last bit, so conduction neither makes nor loses heat.
 */
export function conductionInto(plan: MeshPlan, temperatureK: Float64Array, conductivity: Float64Array, flow: Float64Array): void {
  const { edgeStart, edgeTo, halfConductance } = plan
  const n = plan.nodes
  flow.fill(0)
  let edge = 0
  for (let i = 0; i < n; i++) {
    const end = edgeStart[i + 1]!
    const t = temperatureK[i]!
    const k = conductivity[i]!
    let into = flow[i]!
    for (; edge < end; edge++) {
      const j = edgeTo[edge]!
      const heat = halfConductance[edge]! * (k + conductivity[j]!) * (temperatureK[j]! - t)
      into += heat
      flow[j] = flow[j]! - heat
    }
    flow[i] = into
  }
}

/** Sum of the sizes of conductance times conductivity over the edges of each node [n, W/K]. */
export function conductanceSums(plan: MeshPlan, conductivity: Float64Array, sums: Float64Array): void {
  const { edgeStart, edgeTo, halfConductance } = plan
  const n = plan.nodes
  sums.fill(0)
  let edge = 0
  for (let i = 0; i < n; i++) {
    const end = edgeStart[i + 1]!
    const k = conductivity[i]!
    let total = sums[i]!
    for (; edge < end; edge++) {
      const j = edgeTo[edge]!
      const size = Math.abs(halfConductance[edge]! * (k + conductivity[j]!))
      total += size
      sums[j] = sums[j]! + size
    }
    sums[i] = total
  }
}
