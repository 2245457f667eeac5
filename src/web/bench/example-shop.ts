import chisel from '#examples/cold-chisel.yaml'
import punch from '#examples/hot-slot-punch.yaml'
import shop from '#examples/shop.yaml'
import bottomTool from '#examples/stepped-bottom-tool.yaml'
import type { JobText, ShopText } from '#web/job/job-text.ts'
import type { Bar } from '#web/shelf/shelf.ts'

/** The workshop that keeps the town's iron gates and bridge railings going: what a newcomer finds on the bench. */
export const exampleShop = shop as ShopText

export const examplePieces: readonly JobText[] = [bottomTool, punch, chisel].map(({ shop: _, ...job }) => job as JobText)

export const exampleBars: readonly Omit<Bar, 'id' | 'made'>[] = [
  { name: 'chrome-moly round', steel: { grade: '4140' }, section: '1-1/2 in round', length: '22 in', note: 'bought by grade' },
  { name: 'punch bar', steel: { grade: 'S7' }, section: '22 mm round', length: '400 mm', note: 'bought by grade, annealed' },
  { name: 'drill rod', steel: { grade: 'W1' }, section: '3/4 in octagon', length: '18 in', note: 'bought by grade' },
]
