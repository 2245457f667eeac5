import type { System } from '#units/length.ts'
import type { JobText } from '#web/job/job-text.ts'
import type { Measure } from '#web/job/measure.ts'
import { metresAt } from '#web/job/measure.ts'
import { reached } from '#web/job/sound-shape.ts'

/** What the hand takes hold of, and how the figure follows it. */
export interface Grip {
  readonly key: string
  readonly measure: Measure
  readonly perX: number
  readonly perR: number
}

/** A place on the drawing: up from the working end, right of the axis [mm]. */
export interface HandMm {
  readonly xMm: number
  readonly rMm: number
}

export type Gesture =
  | { readonly kind: 'idle' }
  /** Pressed but not yet moved: it may still be a tap. */
  | { readonly kind: 'pressed'; readonly grip: Grip; readonly before: JobText; readonly from: HandMm }
  | {
      readonly kind: 'dragging'
      readonly grip: Grip
      readonly before: JobText
      readonly from: HandMm
      readonly job: JobText
      /** What keeps the metal from following the hand. */
      readonly blocked?: string
    }

export type GestureEvent =
  | { readonly kind: 'pressed'; readonly grip: Grip; readonly job: JobText; readonly at: HandMm }
  /** `slackMm`: a hand that has moved less has not moved. */
  | { readonly kind: 'moved'; readonly at: HandMm; readonly slackMm: number; readonly system: System }
  | { readonly kind: 'released' }
  /** Escape, or the device took the pointer away: everything as it was. */
  | { readonly kind: 'escaped' }

export const IDLE: Gesture = { kind: 'idle' }

/** What a drag has come to. The document is always worked out from where it stood when it was taken hold of, so that going back is going back. */
export function advance(state: Gesture, event: GestureEvent): Gesture {
  switch (event.kind) {
    case 'pressed':
      return state.kind === 'idle' ? { kind: 'pressed', grip: event.grip, before: event.job, from: event.at } : state
    case 'moved':
      return moved(state, event)
    case 'released':
    case 'escaped':
      return IDLE
  }
}

/** The document that the page should hold after an event; undefined when the gesture has no say in it. */
export function heldJob(before: Gesture, event: GestureEvent, after: Gesture): JobText | undefined {
  if (after.kind === 'dragging') return after.job
  return event.kind === 'escaped' && before.kind === 'dragging' ? before.before : undefined
}

function moved(state: Gesture, { at, slackMm, system }: Extract<GestureEvent, { kind: 'moved' }>): Gesture {
  if (state.kind === 'idle') return state
  const { grip, before, from } = state
  const [byX, byR] = [at.xMm - from.xMm, at.rMm - from.rMm]
  if (state.kind === 'pressed' && Math.abs(byX * grip.perX) < slackMm && Math.abs(byR * Math.sign(grip.perR)) < slackMm)
    return state
  const startM = metresAt(before, grip.measure)
  if (startM === undefined) return state
  const wantedM = startM + (grip.perX * byX + grip.perR * byR) / 1000
  const { job, blocked } = reached(before, grip.measure, wantedM, system)
  return { kind: 'dragging', grip, before, from, job, ...(blocked === undefined ? {} : { blocked }) }
}
