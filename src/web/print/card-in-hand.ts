import { type ReadonlySignal, signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { planLink } from '#contract/plan-link.ts'
import { CARD_SIZES, type CardSize } from '#report/card-sizes.ts'
import type { Bench } from '#web/bench/bench.ts'
import type { Answered } from '#web/work/desk.ts'
import type { CardReply } from '#web/work/messages.ts'

/** The card of the piece in hand, or why there is none. */
export type CardInHand =
  | { readonly kind: 'waiting' }
  /** `coarse` while the full forecast is still to come. */
  | (Extract<CardReply, { kind: 'card' }> & { readonly coarse: boolean; readonly size: CardSize; readonly piece: string })
  | Extract<CardReply, { kind: 'too-small' }>
  | { readonly kind: 'failed' }

const SIZE_KEY = 'quenchwright.card'

/** Size of the card, kept on the device. */
export const cardSize = signal<CardSize>(keptSize())

export function chooseCardSize(size: CardSize): void {
  cardSize.value = size
  try {
    localStorage.setItem(SIZE_KEY, size)
  } catch {
    // The device keeps nothing; `Shelf` tells so.
  }
}

function keptSize(): CardSize {
  try {
    return CARD_SIZES.find((each) => each === localStorage.getItem(SIZE_KEY)) ?? usualSize()
  } catch {
    return usualSize()
  }
}

/** Letter paper is at home where inches are. */
function usualSize(): CardSize {
  return /-(?:US|CA|MX)$/u.test(navigator.language) ? 'Letter' : 'A5'
}

const card = signal<CardInHand>({ kind: 'waiting' })

/** The card of the piece in hand, made anew with every full forecast; nothing is fetched for it. */
export function useCardInHand(bench: Bench): ReadonlySignal<CardInHand> {
  const answered = bench.outlook.answered.value
  const coarse = bench.outlook.stale.value
  const size = cardSize.value
  const piece = bench.piece.value?.id ?? ''
  useEffect(() => {
    if (answered === undefined) {
      card.value = { kind: 'waiting' }
      return undefined
    }
    // The last one stays in sight while figures move, and cannot be printed.
    const now = card.peek()
    if (coarse && now.kind === 'card' && now.size === size && now.piece === piece) {
      card.value = { ...now, coarse }
      return undefined
    }
    let wanted = true
    void make(bench, answered, size).then(
      (made) => {
        if (wanted) card.value = made.kind === 'card' ? { ...made, coarse, size, piece } : made
      },
      (error: unknown) => {
        console.error(error)
        if (wanted) card.value = { kind: 'failed' }
      },
    )
    return () => {
      wanted = false
    }
  }, [bench, answered, coarse, size, piece])
  return card
}

async function make(bench: Bench, { forecast, job, units }: Answered, size: CardSize): Promise<CardReply> {
  const link = await planLink(`${location.origin}/`, job)
  const day = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium' }).format(new Date())
  const options = { size, units, link, generatedBy: `Quenchwright, ${day}`, ownFace: true }
  return bench.crew.ask('card', [forecast, options]).answer
}
