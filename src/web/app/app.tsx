import './app.css'
import { useEffect } from 'preact/hooks'
import { LocationProvider, Route, Router, useLocation } from 'preact-iso'
import type { Bench } from '#web/bench/bench.ts'
import { CarryNotice } from '#web/carry/carry-notice.tsx'
import { EditionNotice } from './edition-notice.tsx'
import type { Editions } from './editions.ts'
import { later } from './later.tsx'
import { PiecePlace } from './piece-place.tsx'
import { TopBar } from './top-bar.tsx'
import { TroubleNotice } from './trouble-notice.tsx'

const BenchPlace = later(async () => (await import('#web/bench/bench-place.tsx')).BenchPlace)
const RackPlace = later(async () => (await import('#web/rack/rack-place.tsx')).RackPlace)
const ProofPlace = later(async () => (await import('#web/proof/proof-place.tsx')).ProofPlace)
const ShopPlace = later(async () => (await import('#web/shop/shop-place.tsx')).ShopPlace)

/** The page: four places (Bench, Rack, Shop, Proof), and the piece that is open. */
export function App({ bench, editions }: { readonly bench: Bench; readonly editions: Editions }) {
  return (
    <LocationProvider>
      <TopBar bench={bench} />
      <TroubleNotice bench={bench} />
      <EditionNotice editions={editions} />
      <CarryNotice bench={bench} />
      <main>
        <Router>
          <Route path="/" component={() => <FirstLook bench={bench} />} />
          <Route path="/bench" component={() => <BenchPlace bench={bench} />} />
          <Route path="/rack" component={() => <RackPlace bench={bench} />} />
          <Route path="/shop" component={() => <ShopPlace bench={bench} />} />
          <Route path="/proof" component={() => <ProofPlace bench={bench} />} />
          <Route path="/piece/:id/:side?" component={PieceRoute(bench)} />
          <Route default component={() => <NotHere />} />
        </Router>
      </main>
    </LocationProvider>
  )
}

/** One component for the life of the page, so that going from side to side keeps what is on the screen. */
const pieceRoutes = new WeakMap<Bench, (props: { id?: string; side?: string }) => preact.JSX.Element>()
function PieceRoute(bench: Bench) {
  const known = pieceRoutes.get(bench)
  if (known !== undefined) return known
  const made = ({ id, side }: { id?: string; side?: string }) => <PiecePlace bench={bench} id={id ?? ''} side={side ?? 'shape'} />
  pieceRoutes.set(bench, made)
  return made
}

/** The page was opened with no place in mind: the piece that was last worked on, or the example. */
function FirstLook({ bench }: { readonly bench: Bench }) {
  const { route } = useLocation()
  const ready = bench.ready.value
  const first = bench.pieces.value[0]
  useEffect(() => {
    if (ready) route(first === undefined ? '/bench' : `/piece/${first.id}/shape`, true)
  }, [ready, first, route])
  return <p class="opening">Opening the bench ...</p>
}

function NotHere() {
  return (
    <div class="notice">
      <h1>Nothing stands here</h1>
      <p>The address names no place of Quenchwright.</p>
      <a class="button" href="/bench">
        To the bench
      </a>
    </div>
  )
}
