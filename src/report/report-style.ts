/** Look of the page: ink on warm white for the bench, black on white on paper. Nothing is told by hue alone. */
export const REPORT_STYLE = `
:root {
  --paper: #faf7f0; --ink: #1f1c18; --soft: #59524a; --rule: #d3cbbd; --hair: #e6dfd2; --liquid: #e7ebea; --blue: #24506e;
  color-scheme: light;
}
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; text-size-adjust: 100%; }
body {
  margin: 0; background: var(--paper); color: var(--ink); font: 16px/1.5 "Source Sans 3", "Noto Sans", system-ui, -apple-system, "Segoe UI", Roboto, "Liberation Sans", Arial, sans-serif;
  font-variant-numeric: tabular-nums lining-nums; overflow-wrap: break-word;
}
main { max-width: 1240px; margin: 0 auto; padding: 28px 24px 40px; display: flex; flex-direction: column; gap: 36px; }
h1, h2, h3 { font-weight: 600; line-height: 1.2; margin: 0; text-wrap: balance; }
h1 { font-size: 32px; letter-spacing: -0.01em; }
h1::first-letter { text-transform: uppercase; }
h2 { font-size: 20px; margin-bottom: 12px; padding-top: 10px; border-top: 2px solid var(--ink); }
h3 { font-size: 16px; }
p { margin: 0; }
.soft { color: var(--soft); }
header .lead { font-size: 18px; margin-top: 6px; }
header .verdict { margin-top: 14px; font-size: 20px; max-width: 60ch; }
.bench { display: grid; grid-template-columns: minmax(0, 706px) minmax(0, 1fr); grid-template-areas: "figure found" "zones found"; column-gap: 40px; row-gap: 32px; align-items: start; grid-template-rows: auto 1fr; }
.figure { grid-area: figure; } .zones { grid-area: zones; } .found { grid-area: found; }
.pair { display: flex; align-items: flex-start; gap: 8px; }
.pair.narrow { display: none; gap: 0; } .pair.paper { display: none; }
.picture { display: block; max-width: 100%; height: auto; }
.key { list-style: none; margin: 10px 0 0; padding: 0; font-size: 14px; color: var(--soft); display: grid; grid-template-columns: 1fr 1fr; gap: 2px 20px; }
.key li { display: flex; gap: 8px; align-items: baseline; } .key svg { flex: none; transform: translateY(2px); }
.note { font-size: 14px; color: var(--soft); margin-top: 8px; max-width: 80ch; }

table { border-collapse: collapse; width: 100%; }
th { text-align: left; font-weight: 600; font-size: 14px; color: var(--soft); padding: 0 14px 4px 0; vertical-align: bottom; }
td, tbody th { padding: 8px 14px 8px 0; border-top: 1px solid var(--rule); vertical-align: top; }
tbody th { font-size: 16px; color: var(--ink); }
td small, tbody th small { display: block; font-size: 14px; font-weight: 400; color: var(--soft); }
td b { font-weight: 600; white-space: nowrap; }
.chance { white-space: nowrap; } td:last-child, th:last-child { padding-right: 0; }
.meter { display: block; margin-top: 5px; }
.meter rect { fill: none; stroke: var(--ink); stroke-width: 1; } .meter .on { fill: var(--ink); }

.findings { list-style: none; margin: 0; padding: 0; }
.findings li { display: grid; grid-template-columns: 22px minmax(0, 1fr); gap: 2px 12px; padding: 12px 0; border-top: 1px solid var(--rule); break-inside: avoid; }
.findings li:first-child { border-top: 0; padding-top: 0; }
.findings svg { margin-top: 2px; }
.findings .kind { font-size: 14px; color: var(--soft); }
.findings .kind b { color: var(--ink); }
.findings .says { font-weight: 600; }
.findings .do { margin-top: 2px; }
.findings .do::before { content: "\\2192\\00a0"; }
.caution { margin-top: 6px; padding: 4px 0 4px 12px; border-left: 4px solid var(--ink); font-size: 15px; }
.caution b { font-weight: 600; }

.card .sheet { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 32px; align-items: start; }
.steps { list-style: none; margin: 0; padding: 0; }
.steps > li { display: grid; grid-template-columns: 26px minmax(0, 1fr); gap: 0 14px; padding: 12px 0 14px; border-top: 1px solid var(--rule); break-inside: avoid; }
.steps > li:first-child { border-top: 0; padding-top: 0; }
.box { width: 22px; height: 22px; border: 2px solid var(--ink); background: #fff; margin-top: 1px; }
.steps h3 { display: flex; gap: 12px; justify-content: space-between; align-items: baseline; }
.steps h3 .clock { font-weight: 400; color: var(--soft); white-space: nowrap; }
.blanks { display: flex; flex-wrap: wrap; gap: 6px 22px; margin-top: 10px; font-size: 14px; color: var(--soft); }
.blank { display: inline-flex; align-items: baseline; gap: 6px; }
.blank i { display: inline-block; width: 72px; border-bottom: 1px solid var(--soft); height: 1.2em; }
.blank.wide i { width: 150px; }
.proof { margin-top: 20px; border-top: 2px solid var(--ink); padding-top: 10px; }
.rest { display: grid; gap: 36px; } .rest:empty { display: none; }
.routes { list-style: none; padding: 0; margin: 0; } .routes li { padding: 10px 0; border-top: 1px solid var(--rule); }
.said { margin: 0; padding: 0; list-style: none; columns: 2; column-gap: 40px; font-size: 15px; } .said li { break-inside: avoid; padding: 3px 0; }
.sources { font-size: 13px; line-height: 1.45; color: var(--soft); } .sources ul { margin: 6px 0 0; padding: 0; list-style: none; }
.wide-only { display: block; } .middle-only, .narrow-only { display: none; }

.picture text { font-size: 13px; fill: var(--ink); font-family: inherit; }
.picture .soft { fill: var(--soft); } .picture .strong { font-weight: 600; } .picture .on-ink { fill: #fff; font-weight: 600; }
.picture .halo { paint-order: stroke; stroke: var(--paper); stroke-width: 4px; stroke-linejoin: round; }
.picture .contour-number { font-weight: 600; paint-order: stroke; stroke: var(--paper); stroke-width: 4px; stroke-linejoin: round; } .picture .contour-number.wet { stroke: var(--liquid); }
.liquid { fill: var(--liquid); }
.level { stroke: var(--blue); stroke-width: 1.4; } .level-dash { stroke: var(--blue); stroke-width: 1; } .level-sign { fill: none; stroke: var(--blue); stroke-width: 1.2; }
.outside { fill: #fffdf8; } .cut { fill: #fffdf8; }
.outline { fill: none; stroke: var(--ink); stroke-width: 2.2; stroke-linejoin: round; stroke-linecap: round; }
.edge { stroke: var(--ink); stroke-width: 1.1; } .hidden-edge { fill: none; stroke: var(--ink); stroke-width: 1; stroke-dasharray: 4 3; }
.centre-line { stroke: var(--ink); stroke-width: 0.9; stroke-dasharray: 14 3 2 3; }
.contour { fill: none; stroke: var(--ink); stroke-width: 0.9; } .probe { stroke: var(--ink); stroke-width: 1.6; }
.leader, .measure { fill: none; stroke: var(--soft); stroke-width: 0.7; } .leader-foot { fill: var(--soft); }
.bracket { fill: none; stroke: var(--ink); stroke-width: 1.6; } .bracket.assumed, .aim.assumed { stroke-dasharray: 5 3; }
.mark-stop { fill: var(--ink); } .mark-warn { fill: var(--paper); stroke: var(--ink); stroke-width: 2.4; } .mark-note { fill: var(--paper); stroke: var(--ink); stroke-width: 0.9; }
.grid { stroke: var(--rule); stroke-width: 0.8; } .grid.faint { stroke: var(--hair); } .axis { stroke: var(--ink); stroke-width: 1; }
.no-scale { fill: var(--hair); opacity: 0.6; }
.band-skin { fill: var(--ink); fill-opacity: 0.16; } .band-centre { fill: var(--blue); fill-opacity: 0.1; }
.skin-tempered { fill: none; stroke: var(--ink); stroke-width: 2.4; } .centre-tempered { fill: none; stroke: var(--blue); stroke-width: 2; stroke-dasharray: 7 4; }
.skin-quenched { fill: none; stroke: var(--soft); stroke-width: 1.1; } .centre-quenched { fill: none; stroke: var(--soft); stroke-width: 1.1; stroke-dasharray: 2 3; }
.aim { fill: none; stroke: var(--ink); stroke-width: 1.3; }
.critical { stroke: var(--ink); stroke-width: 0.8; stroke-dasharray: 10 4; } .step-edge { stroke: var(--rule); stroke-width: 1; } .glow { fill: url(#glow); }

@media screen and (max-width: 1240px) { .wide-only { display: none; } .middle-only { display: block; } }
@media screen and (max-width: 1080px) {
  .bench { grid-template-columns: minmax(0, 1fr); grid-template-areas: "figure" "found" "zones"; }
}
@media screen { .time { order: 2; } .card { order: 3; } .rest { order: 4; } .sources { order: 5; } }
@media screen and (max-width: 760px) {
  main { padding: 18px 16px 28px; gap: 28px; }
  h1 { font-size: 26px; } header .verdict { font-size: 18px; }
  .pair.wide { display: none; } .pair.narrow { display: flex; }
  .key, .said { grid-template-columns: 1fr; columns: 1; }
  .card .sheet { grid-template-columns: minmax(0, 1fr); } .card .sheet .figure-small { display: none; } .pair.narrow .picture { max-width: none; flex: none; }
  .middle-only { display: none; } .narrow-only { display: block; }
  .stack thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
  .stack tr { display: grid; grid-template-columns: 1fr 1fr; gap: 6px 16px; padding: 12px 0; border-top: 1px solid var(--rule); }
  .stack td, .stack tbody th { display: block; border: 0; padding: 0; } .stack tbody th { grid-column: 1 / -1; }
  .stack td::before { content: attr(data-head); display: block; font-size: 14px; color: var(--soft); }
}
@media print {
  @page { margin: 12mm 13mm; }
  :root { --paper: #fff; --ink: #000; --soft: #3f3f3f; --rule: #b5b5b5; --hair: #ddd; --liquid: #f0f0f0; --blue: #222; }
  * { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  body { font-size: 9.2pt; line-height: 1.32; }
  main { max-width: none; padding: 0; display: block; }
  main > * { margin-bottom: 3.5mm; }
  h1 { font-size: 19pt; } h2 { font-size: 12pt; margin-bottom: 2mm; padding-top: 1.5mm; break-after: avoid; } h3 { font-size: 10pt; }
  header .lead { font-size: 10pt; margin-top: 1mm; } header .verdict { font-size: 10.5pt; margin-top: 1.5mm; max-width: none; }
  .bench { display: block; } .bench > * { margin-bottom: 3mm; }
  .pair.wide, .pair.narrow { display: none; } .pair.paper { display: flex; gap: 3mm; } .pair .picture { max-width: none; }
  .figure { display: grid; grid-template-columns: auto minmax(0, 1fr); gap: 5mm; align-items: start; break-inside: avoid; }
  .pair.paper .picture:first-child { width: auto; } .pair.paper { zoom: 0.88; }
  .key { grid-template-columns: 1fr; font-size: 8.5pt; margin-top: 0; gap: 1mm; } .note, .sources { font-size: 8pt; } .said { font-size: 9pt; columns: 2; }
  td, tbody th { padding: 1mm 3mm 1mm 0; font-size: 9.5pt; } th, td small, tbody th small { font-size: 8.5pt; } td small { display: inline; white-space: nowrap; } .chance { min-width: 0; } .meter { margin-top: 2px; }
  .findings { display: grid; grid-template-columns: 1fr 1fr; column-gap: 8mm; align-items: start; } .findings li { padding: 1.6mm 0; grid-template-columns: 22px 1fr; gap: 0 2.5mm; } .findings .kind { font-size: 8.5pt; }
  .findings li:first-child { padding-top: 1.6mm; border-top: 1px solid var(--rule); } .findings { border-bottom: 0; margin-top: -1px; }
  .caution { font-size: 9pt; margin-top: 1mm; padding: 0 0 0 2mm; }
  .card { break-before: page; break-after: page; }
  .card .sheet { grid-template-columns: auto minmax(0, 1fr); gap: 7mm; } .card .sheet .figure-small { display: block; }
  .steps > li { padding: 2mm 0; } .blanks { font-size: 8.2pt; margin-top: 1.4mm; gap: 1mm 4mm; } .blank i { width: 15mm; } .blank.wide i { width: 30mm; } .steps .caution { font-size: 8.4pt; } .proof { margin-top: 2.5mm; padding-top: 1.5mm; }
  .wide-only, .narrow-only { display: none; } .middle-only { display: block; }
  .rest { gap: 5mm; }
  table, .time, .proof, .routes li { break-inside: avoid; }
}
`
