/** What is drawn from an answer or works on the piece beside it: fetched in one go while the engine starts on its first question. */
export { FindingFlags } from '#web/findings/finding-flags.tsx'
export { TriedBar } from '#web/findings/tried-bar.tsx'
export { AlongPicture } from '#web/forecast/along-picture.tsx'
export { CutAway } from '#web/forecast/cut-away.tsx'
export { FieldChoice } from '#web/forecast/field-choice.tsx'
export { TimeLine } from '#web/forecast/time-line.tsx'
export { ShapeSide } from '#web/shape/shape-side.tsx'
