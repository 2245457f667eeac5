/** What a page or a form offers for the gear of a shop. */
export { AGITATIONS, BATH_KINDS, FIRE_KINDS } from '#engine/surface-heat/gear.ts'
export { HARDNESS_SCALES } from '#units/hardness.ts'
