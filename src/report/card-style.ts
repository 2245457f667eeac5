import { ROW_GAP_MM } from './card-rows.ts'
import { CARD_FORMATS, type CardSize } from './card-sizes.ts'

const FACES = '"Source Sans 3 Variable","Source Sans 3",Arial,"Liberation Sans",Helvetica,"DejaVu Sans Condensed",sans-serif'

/**
 * Look of a card, black on white, for wherever it stands: every rule is about what is inside `.qw-card`, and takes back what the page
 * around it may have said of headings and lists.
 */
export const CARD_STYLE = `
.qw-card{box-sizing:border-box;display:flex;flex-direction:column;background:#fff;color:#000;font:400 10pt/1.19 ${FACES};font-variant-numeric:normal;text-align:left;overflow-wrap:anywhere;hyphens:none;-webkit-text-size-adjust:none;text-size-adjust:none;print-color-adjust:exact;-webkit-print-color-adjust:exact;break-inside:avoid;break-after:avoid}
.qw-card *{box-sizing:border-box;margin:0;padding:0;border:0;font:inherit;line-height:inherit;color:inherit;letter-spacing:normal;text-transform:none;text-decoration:none;text-wrap:wrap;max-width:none;background:none}
.qw-card h1{display:inline-block;line-height:1}
.qw-card h2{display:inline}
.qw-card b,.qw-card h1,.qw-card h2{font-weight:600}
.qw-card h1::first-letter{text-transform:uppercase}
.qw-card .qw-head{border-bottom:.5mm solid #000;padding-bottom:.6mm;margin-bottom:1mm}
.qw-card .qw-head h1{margin-right:.25em}
.qw-card .qw-steel{margin-right:1.1em}
.qw-card .qw-sheet{display:flex;flex:1 1 auto;align-items:stretch}
.qw-card .qw-left{flex:none;display:flex;flex-direction:column;justify-content:space-between}
.qw-card .qw-right{flex:1 1 0;min-width:0}
.qw-card .qw-around{flex:1 1 auto}
.qw-card .qw-around .qw-left{float:left}
.qw-card .qw-around :is(li,.qw-before,.qw-proof){display:flow-root}
.qw-card ol{list-style:none}
.qw-card li{position:relative}
.qw-card .qw-rows>div+div{margin-top:${ROW_GAP_MM}mm}
.qw-card .qw-tick{position:absolute;left:0;top:.1em;border:.3mm solid #000}
.qw-card .qw-clock{float:right;margin-left:.6em;font-weight:600;white-space:nowrap}
.qw-card .qw-care{border-left:.9mm solid #000;padding-left:1.3mm}
.qw-card .qw-before{border:.4mm solid #000;padding:.8mm 1.2mm}
.qw-card .qw-notes div{border-bottom:.2mm solid #000}
.qw-card .qw-proof{border-top:.3mm solid #000;padding-top:.7mm}
.qw-card .qw-blank{display:inline-block;white-space:nowrap;margin-right:.3em}
.qw-card .qw-line{display:inline-block;border-bottom:.2mm solid #000;height:.7em;margin-left:.3em;vertical-align:baseline}
.qw-card .qw-time{display:inline-block;border:.25mm solid #000;margin-left:.3em;vertical-align:-.05em}
.qw-card .qw-feet{border-top:.2mm solid #000;padding-top:.4mm;margin-top:.6mm;color:#222}
.qw-card .qw-caption{margin-top:.6mm}
.qw-card svg{display:block;flex:none}
.qw-card svg text{fill:#000;font-size:inherit}
.qw-card .qw-name{paint-order:stroke;stroke:#fff;stroke-width:.5;stroke-linejoin:round}
.qw-card .qw-strong{font-weight:600}
.qw-card .qw-liquid{fill:#ebebeb}
.qw-card .qw-tank{fill:none;stroke:#000;stroke-width:.4}
.qw-card .qw-level{stroke:#000;stroke-width:.25}
.qw-card .qw-dash{stroke:#000;stroke-width:.18}
.qw-card .qw-sign{fill:#fff;stroke:#000;stroke-width:.2}
.qw-card .qw-metal{fill:#fff;stroke:#000;stroke-width:.5;stroke-linejoin:round}
.qw-card .qw-edge{stroke:#000;stroke-width:.2}
.qw-card .qw-hidden{fill:none;stroke:#000;stroke-width:.2;stroke-dasharray:.9 .6}
.qw-card .qw-axis{stroke:#000;stroke-width:.18;stroke-dasharray:2.4 .6 .4 .6}
.qw-card .qw-zone-bracket{fill:none;stroke:#000;stroke-width:.35}
.qw-card .qw-assumed{stroke-dasharray:1 .7}
`

/** The sheet of paper for a size, for a page that holds nothing but cards of it when it is printed. */
export function cardPageRule(size: CardSize): string {
  const { widthMm, heightMm } = CARD_FORMATS[size]
  return `@page{size:${widthMm}mm ${heightMm}mm;margin:0}`
}
