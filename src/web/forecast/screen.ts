import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'

/** True while a question about the screen, as style sheets ask it, is answered with yes. */
export function useScreen(query: string): boolean {
  const now = useSignal(matchMedia(query).matches)
  useEffect(() => {
    const asked = matchMedia(query)
    const onChange = (): void => {
      now.value = asked.matches
    }
    asked.addEventListener('change', onChange)
    return () => asked.removeEventListener('change', onChange)
  }, [query, now])
  return now.value
}

/** A low screen that is wide: a small laptop. Curves are lower there, and hints make room. The same stands in time-line.css. */
export const LOW_SCREEN = '(max-height: 52rem) and (min-width: 62.001rem)'
