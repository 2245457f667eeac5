import type { ZoneOutlook } from '#engine/ensemble/outlook.ts'
import { STRUCK_END_MOST_HRC } from '#engine/simulation/struck-end.ts'
import type { Account } from './account.ts'

/** Harder than this a struck end may throw chips, harder than the second it will [HRC]. A hammer face is 50 and up (DIN 1193 via DGUV 209-001). */
export const STRUCK_END_WARN_HRC = STRUCK_END_MOST_HRC
export const STRUCK_END_STOP_HRC = 50

/** Where the struck end begins [m]: what the hammer's blow reaches (common practice, no source). */
export function struckFromM({ lengthM }: Pick<Account, 'lengthM'>): number {
  return lengthM - Math.min(0.02, 0.2 * lengthM)
}

export function isStruckZone(account: Account, { zone }: Pick<ZoneOutlook, 'zone'>): boolean {
  return account.job.struck && zone.toM > struckFromM(account)
}
