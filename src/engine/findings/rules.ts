import type { Account } from './account.ts'
import { bathFindings } from './bath-findings.ts'
import { brittlenessFindings } from './brittleness-findings.ts'
import { type EngineFinding, inOrder } from './finding.ts'
import { heatFindings } from './heat-findings.ts'
import { ovenFindings } from './oven-findings.ts'
import { reachFindings } from './reach-findings.ts'
import { safetyFindings } from './safety-findings.ts'
import { shapeFindings } from './shape-findings.ts'
import { steamFindings } from './steam-findings.ts'
import { temperFindings } from './temper-findings.ts'
import type { Wording } from './wording.ts'

/** Every rule over one account: one finding for each cause and place, worst first. */
export function findingsIn(account: Account, say: Wording): EngineFinding[] {
  return inOrder([
    ...heatFindings(account, say),
    ...bathFindings(account, say),
    ...shapeFindings(account, say),
    ...steamFindings(account, say),
    ...temperFindings(account, say),
    ...ovenFindings(account, say),
    ...brittlenessFindings(account, say),
    ...safetyFindings(account, say),
    ...reachFindings(account, say),
  ])
}
