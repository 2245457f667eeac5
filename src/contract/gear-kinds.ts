/** What a page or a form offers for the gear of a shop. */
export { COOLING_PLACES } from '#engine/simulation/process.ts'
export { USUAL_ATMOSPHERE } from '#engine/surface-heat/atmosphere.ts'
export { AGITATIONS, ATMOSPHERES, type Atmosphere, BATH_KINDS, FIRE_KINDS } from '#engine/surface-heat/gear.ts'
export { HARDNESS_SCALES } from '#units/hardness.ts'
