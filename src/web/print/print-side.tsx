import './print-side.css'
import { CARD_FORMATS, CARD_SIZES } from '#report/card-sizes.ts'
import type { Bench } from '#web/bench/bench.ts'
import { Choice } from '#web/look/choice.tsx'
import { cardSize, chooseCardSize, useCardInHand } from './card-in-hand.ts'

const SIZE_SAYS = { A6: 'A6', '3x5': '3 x 5 in', A5: 'A5', A4: 'A4', Letter: 'Letter' } as const

/** The card for the wall or the bench: chosen by size, shown as it will lie on paper, printed by this device alone. */
export function PrintSide({ bench }: { readonly bench: Bench }) {
  const card = useCardInHand(bench).value
  const size = cardSize.value
  return (
    <div class="print-side">
      <Choice
        name="Paper"
        value={size}
        values={CARD_SIZES.map((each) => [each, SIZE_SAYS[each]] as const)}
        onChosen={chooseCardSize}
      />
      {card.kind === 'waiting' && (
        <div class="notice">
          {bench.outlook.untreated.value ? (
            <p>No treatment yet, so there is nothing to carry to the fire. Treatment proposes one.</p>
          ) : (
            <p role="status">The card comes with the forecast ...</p>
          )}
        </div>
      )}
      {card.kind === 'failed' && (
        <div class="notice loud" role="alert">
          <p>The card could not be made. The treatment itself stands under Treatment; choosing a size tries again.</p>
        </div>
      )}
      {card.kind === 'too-small' && (
        <div class="notice loud" role="alert">
          <p class="strong">Too much for this card.</p>
          <p>{card.says}.</p>
          {card.take !== undefined && (
            <button type="button" class="button" onClick={() => card.take !== undefined && chooseCardSize(card.take)}>
              Take {SIZE_SAYS[card.take]}
            </button>
          )}
        </div>
      )}
      {card.kind === 'card' && (
        <>
          <div class="print-does">
            <button type="button" class="button main" onClick={() => print()} disabled={card.coarse}>
              Print the card
            </button>
            <p class="soft" role="status">
              {card.coarse
                ? 'The figures are still coarse; the full ones come in a moment.'
                : 'The cautions stay on it, on every size.'}
            </p>
          </div>
          <CardPreview
            widthMm={CARD_FORMATS[card.size].widthMm}
            heightMm={CARD_FORMATS[card.size].heightMm}
            html={card.html}
            rules={card.rules}
          />
          <p class="soft">
            The code opens this plan at {location.host}. On another device it opens where Quenchwright is served to that device.
          </p>
        </>
      )}
    </div>
  )
}

interface CardPreviewProps {
  readonly widthMm: number
  readonly heightMm: number
  readonly html: string
  readonly rules: string
}

/** The card scaled to the room there is; on paper it has its own size. */
function CardPreview({ widthMm, heightMm, html, rules }: CardPreviewProps) {
  return (
    <div class="card-preview" style={{ '--card-width': `${widthMm}`, '--card-height': `${heightMm}` }}>
      <style>{rules}</style>
      {/* The card's own writer escapes everything that a smith typed. */}
      <div class="card-sheet" dangerouslySetInnerHTML={{ __html: html }} />
    </div>
  )
}
