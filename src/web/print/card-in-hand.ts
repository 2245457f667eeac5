import { type ReadonlySignal, signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { planLink } from '#contract/plan-link.ts'
import { CardTooSmall, cardFragment } from '#report/card.ts'
import { CARD_SIZES, type CardSize } from '#report/card-sizes.ts'
import { CARD_STYLE, cardPageRule } from '#report/card-style.ts'
import type { Bench } from '#web/bench/bench.ts'

/** The card of the piece in hand, or why there is none. */
export type CardInHand =
  | { readonly kind: 'waiting' }
  /** `rules` holds for the paper, `html` for what is on it; `coarse` while the full forecast is still to come. */
  | { readonly kind: 'card'; readonly html: string; readonly rules: string; readonly coarse: boolean }
  | { readonly kind: 'too-small'; readonly says: string; readonly take: CardSize | undefined }

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

/** The card of the piece in hand, made anew with every forecast; nothing is fetched for it. */
export function useCardInHand(bench: Bench): ReadonlySignal<CardInHand> {
  const answered = bench.outlook.answered.value
  const coarse = bench.outlook.stale.value
  const size = cardSize.value
  useEffect(() => {
    if (answered === undefined) {
      card.value = { kind: 'waiting' }
      return undefined
    }
    let wanted = true
    void (async () => {
      const link = await planLink(`${location.origin}/`, answered.job)
      await document.fonts.ready
      if (!wanted) return
      const made = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium' }).format(new Date())
      try {
        const html = cardFragment(answered.forecast, {
          size,
          units: answered.units,
          link,
          generatedBy: `Quenchwright, ${made}`,
          ownFace: document.fonts.check('10pt "Source Sans 3 Variable"'),
        })
        card.value = { kind: 'card', html, rules: `${cardPageRule(size)}${CARD_STYLE}`, coarse }
      } catch (error) {
        if (!(error instanceof CardTooSmall)) throw error
        card.value = { kind: 'too-small', says: error.message, take: error.take }
      }
    })()
    return () => {
      wanted = false
    }
  }, [answered, coarse, size])
  return card
}
