import { useLocation } from 'preact-iso'
import type { Bench } from '#web/bench/bench.ts'
import { Choice } from '#web/look/choice.tsx'

const PLACES = [
  ['/bench', 'Bench'],
  ['/rack', 'Rack'],
  ['/shop', 'Shop'],
  ['/proof', 'Proof'],
] as const

/** Where one is, and the two switches that belong to the device. */
export function TopBar({ bench }: { readonly bench: Bench }) {
  const { path } = useLocation()
  const { units, ground } = bench.device
  return (
    <header class="top-bar">
      <a class="word-mark" href="/">
        Quenchwright
      </a>
      <nav aria-label="Places">
        {PLACES.map(([href, says]) => (
          <a
            key={href}
            href={href}
            aria-current={path === href || (href === '/bench' && path.startsWith('/piece')) ? 'page' : undefined}
          >
            {says}
          </a>
        ))}
      </nav>
      <div class="switches">
        <Choice
          name="Units"
          nameHidden
          value={units.value}
          values={[
            ['metric', 'mm °C'],
            ['inch', 'in °F'],
          ]}
          onChosen={(chosen) => {
            units.value = chosen
          }}
        />
        <button
          type="button"
          class="button quiet"
          onClick={() => {
            ground.value = ground.value === 'paper' ? 'slate' : 'paper'
          }}
        >
          {ground.value === 'paper' ? 'Dim' : 'Bright'}
        </button>
      </div>
    </header>
  )
}
