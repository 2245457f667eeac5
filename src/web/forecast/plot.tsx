import 'uplot/dist/uPlot.min.css'
import './plot.css'
import { useSignal } from '@preact/signals'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import type uPlot from 'uplot'

interface PlotProps {
  /** Made once; what changes with every answer is read through it when the plot is drawn. */
  readonly options: Omit<uPlot.Options, 'width' | 'height'>
  readonly data: uPlot.AlignedData
  readonly widthPx: number
  readonly heightPx: number
  /** Another value draws the axes anew: units, ground. */
  readonly look: string
}

/** Curves with their axes. They are for the eye: figures for all stand beside it. The library comes when the first curve is drawn. */
export function Plot({ options, data, widthPx, heightPx, look }: PlotProps) {
  const box = useRef<HTMLDivElement>(null)
  const plot = useRef<uPlot | undefined>(undefined)
  const failed = useSignal(false)
  const latest = useRef({ data, widthPx, heightPx })
  latest.current = { data, widthPx, heightPx }

  useEffect(() => {
    let gone = false
    const begin = async (): Promise<void> => {
      const { default: UPlot } = await import('uplot')
      await document.fonts.ready
      if (gone || box.current === null) return
      const now = latest.current
      plot.current = new UPlot({ ...options, width: now.widthPx, height: now.heightPx }, now.data, box.current)
    }
    begin().catch((error: unknown) => {
      console.error(error)
      failed.value = true
    })
    return () => {
      gone = true
      plot.current?.destroy()
      plot.current = undefined
    }
  }, [options, failed])
  useLayoutEffect(() => plot.current?.setSize({ width: widthPx, height: heightPx }), [widthPx, heightPx])
  useLayoutEffect(() => plot.current?.setData(data), [data])
  useLayoutEffect(() => plot.current?.redraw(false, true), [look])
  return (
    <div class="curve-plot" ref={box} aria-hidden="true" style={{ height: `${heightPx}px` }}>
      {failed.value && <p>The curves could not be fetched. Load the page again when the shop's computer can be reached.</p>}
    </div>
  )
}
