import { type Signal, useSignal } from '@preact/signals'
import { useEffect, useRef } from 'preact/hooks'
import { formatLength } from '#units/length.ts'
import type { Bench, Selection } from '#web/bench/bench.ts'
import { type Measure, metresAt, typedAt, withTyped } from '#web/job/measure.ts'
import { steppedM } from '#web/job/snapping.ts'
import { reached } from '#web/job/sound-shape.ts'
import type { DrawnBody } from './body.ts'
import { FigureInput } from './figure.tsx'
import { advance, type Gesture, type GestureEvent, heldJob, IDLE } from './gesture.ts'
import { type Handle, handleAt, handlesOf } from './handles.ts'
import type { Heights } from './heights.ts'
import { handOn } from './still-heights.ts'
import { type ZoneBand, zoneBandPx } from './zone-bands.ts'

interface HandleLayerProps {
  readonly bench: Bench
  readonly body: DrawnBody
  readonly heights: Heights
  readonly widthPx: number
  readonly axisPx: number
  readonly bands: readonly ZoneBand[]
  /** The handle whose figure is being typed over. */
  readonly typing: Signal<string | undefined>
}

/** A hand that has moved less than this has only tapped [px]. */
const SLACK_PX = 4

/** What can be taken hold of. By pointer the nearest handle is meant; by keyboard each is a slider. */
export function HandleLayer({ bench, body, heights, widthPx, axisPx, bands, typing }: HandleLayerProps) {
  const layer = useRef<HTMLDivElement>(null)
  const gesture = useRef<Gesture>(IDLE)
  const held = useSignal<{ readonly key: string; readonly blocked?: string } | undefined>(undefined)
  const job = bench.job.value
  const selection = bench.selection.value
  const sides = bandSides(bands, body, heights, axisPx)
  const handles = handlesOf(job, body, sides)
  const placed = handles.map((handle) => ({
    handle,
    xPx: axisPx + handle.rMm * heights.pxPerMm,
    yPx: heights.yOf(handle.xMm),
    favoured: isOf(selection, handle.measure),
  }))

  const tell = (event: GestureEvent): void => {
    const before = gesture.current
    const after = advance(before, event)
    gesture.current = after
    const next = heldJob(before, event, after)
    const grip = after.kind === 'dragging' ? after.grip : before.kind === 'dragging' ? before.grip : undefined
    if (next !== undefined && next !== bench.job.peek() && grip !== undefined) {
      const handle = handles.find(({ key }) => key === grip.key)
      bench.edit(handle === undefined ? 'drag' : changeSays(handle), () => next, `drag ${grip.key}`)
    }
    if (after.kind === 'idle' && before.kind === 'dragging') bench.settle()
    handOn.value = after.kind !== 'idle'
    held.value =
      after.kind === 'dragging'
        ? { key: after.grip.key, ...(after.blocked === undefined ? {} : { blocked: after.blocked }) }
        : undefined
  }

  const atHand = (event: PointerEvent): { xPx: number; yPx: number } => {
    const box = layer.current?.getBoundingClientRect()
    return { xPx: event.clientX - (box?.left ?? 0), yPx: event.clientY - (box?.top ?? 0) }
  }
  const inMm = ({ xPx, yPx }: { xPx: number; yPx: number }) => ({
    xMm: heights.xAt(yPx),
    rMm: (xPx - axisPx) / heights.pxPerMm,
  })

  const onPointerDown = (event: PointerEvent): void => {
    if (event.button !== 0 || gesture.current.kind !== 'idle') return
    const at = atHand(event)
    const found = placed[handleAt(placed, at.xPx, at.yPx) ?? -1]?.handle
    if (found === undefined) return
    event.preventDefault()
    layer.current?.setPointerCapture(event.pointerId)
    document.getElementById(handleId(found.key))?.focus({ preventScroll: true })
    bench.selection.value = selectionOf(found.measure)
    tell({ kind: 'pressed', grip: found, job, at: inMm(at) })
  }
  const onPointerMove = (event: PointerEvent): void => {
    if (gesture.current.kind === 'idle') return
    const slackMm = SLACK_PX / heights.pxPerMm
    tell({ kind: 'moved', at: inMm(atHand(event)), slackMm, system: bench.device.units.value })
  }

  // Escape is heard wherever the focus is; a hand that leaves the page leaves the metal as it was.
  const teller = useRef(tell)
  teller.current = tell
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || gesture.current.kind === 'idle') return
      event.preventDefault()
      teller.current({ kind: 'escaped' })
    }
    addEventListener('keydown', onKey, true)
    return () => {
      removeEventListener('keydown', onKey, true)
      if (gesture.current.kind !== 'idle') teller.current({ kind: 'escaped' })
    }
  }, [])

  const onKey = (event: KeyboardEvent, handle: Handle): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (event.key === 'Enter') {
      event.preventDefault()
      typing.value = atHandle(handle.key)
      return
    }
    const steps = stepsOf(event)
    if (steps === 0) return
    event.preventDefault()
    const system = bench.device.units.value
    const now = metresAt(bench.job.value, handle.measure) ?? 0
    const { job: next, blocked } = reached(bench.job.value, handle.measure, steppedM(now, steps, system), system)
    bench.edit(changeSays(handle), () => next, `keys ${handle.key}`)
    bench.selection.value = selectionOf(handle.measure)
    held.value = blocked === undefined ? undefined : { key: handle.key, blocked }
  }

  const units = bench.device.units.value
  const inHand = placed.find(({ handle }) => handle.key === held.value?.key)
  const typed = placed.find(({ handle }) => atHandle(handle.key) === typing.value)
  return (
    <div
      class="drawing-handles"
      ref={layer}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={() => tell({ kind: 'released' })}
      onPointerCancel={() => tell({ kind: 'escaped' })}
    >
      {placed.map(({ handle, xPx, yPx, favoured }) => (
        <div
          key={handle.key}
          id={handleId(handle.key)}
          role="slider"
          tabIndex={0}
          class={`drawing-handle way-${handle.way}${favoured ? ' chosen' : ''}${handle.key === held.value?.key ? ' held' : ''}`}
          aria-label={`${handle.of}, ${handle.says}`}
          aria-orientation={handle.way === 'across' ? 'horizontal' : 'vertical'}
          aria-valuemin={0}
          aria-valuemax={Math.round(Math.max(body.lengthMm, handle.valueM * 1000) * 2)}
          aria-valuenow={Math.round(handle.valueM * 1e5) / 100}
          aria-valuetext={typedAt(job, handle.measure) ?? formatLength(handle.valueM, units)}
          style={{ left: `${xPx}px`, top: `${yPx}px` }}
          onKeyDown={(event) => onKey(event, handle)}
          onFocus={() => {
            if (gesture.current.kind === 'idle' && !isOf(bench.selection.peek(), handle.measure))
              bench.selection.value = selectionOf(handle.measure)
          }}
          onBlur={() => {
            if (gesture.current.kind !== 'idle') return
            bench.settle()
            held.value = undefined
          }}
        />
      ))}
      {typed !== undefined && (
        <div class="drawing-typed" style={besidePlace(typed, widthPx)}>
          <FigureInput
            typed={typedAt(job, typed.handle.measure) ?? ''}
            says={`${typed.handle.of}, ${typed.handle.says}`}
            onTyped={(next) => bench.edit(changeSays(typed.handle), (now) => withTyped(now, typed.handle.measure, next))}
            onClose={() => {
              typing.value = undefined
              document.getElementById(handleId(typed.handle.key))?.focus({ preventScroll: true })
            }}
          />
        </div>
      )}
      {inHand !== undefined && (
        <output class="drawing-held" style={besidePlace(inHand, widthPx)}>
          <strong>{typedAt(job, inHand.handle.measure) ?? formatLength(inHand.handle.valueM, units)}</strong>
          {held.value?.blocked !== undefined && <span>{held.value.blocked}</span>}
        </output>
      )}
    </div>
  )
}

/** Where words about a handle stand: over it, and on the drawing. */
function besidePlace({ xPx, yPx }: { readonly xPx: number; readonly yPx: number }, widthPx: number) {
  const half = Math.min(96, widthPx / 2)
  return { left: `${Math.min(widthPx - half, Math.max(half, xPx))}px`, top: `${Math.max(64, yPx - 26)}px` }
}

/** The key of a figure that is typed over at its handle. */
function atHandle(key: string): string {
  return `at ${key}`
}

function bandSides(bands: readonly ZoneBand[], body: DrawnBody, heights: Heights, axisPx: number): number[] {
  const sides: number[] = []
  for (const band of bands) {
    const { leftPx, widthPx } = zoneBandPx(band, body, heights, axisPx)
    if (band.index !== undefined) sides[band.index] = (leftPx + widthPx / 2 - axisPx) / heights.pxPerMm
  }
  return sides
}

function handleId(key: string): string {
  return `handle-${key.replaceAll(' ', '-')}`
}

function selectionOf(measure: Measure): Selection {
  return 'zone' in measure ? { kind: 'zone', index: measure.zone } : { kind: 'section', index: measure.section }
}

function isOf(selection: Selection | undefined, measure: Measure): boolean {
  const own = selectionOf(measure)
  return selection?.kind === own.kind && selection.index === own.index
}

/** What Undo will call it. */
export function changeSays({ of, says }: Pick<Handle, 'of' | 'says'>): string {
  return `${of.replace(/ of \d+, \w+$/u, '').toLowerCase()}: ${says}`
}

/** Arrow keys go by the shop's fraction, by ten of them with Shift or with the page keys. */
export function stepsOf({ key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>): number {
  const by = shiftKey ? 10 : 1
  if (key === 'ArrowUp' || key === 'ArrowRight') return by
  if (key === 'ArrowDown' || key === 'ArrowLeft') return -by
  return key === 'PageUp' ? 10 : key === 'PageDown' ? -10 : 0
}
