/** The whole look of a sheet: paper, ink, one accent; the yarn on its grey. It runs no script and needs nothing else. */
export const sheetCss = `
@font-face { font-family: "Ysabeau Office Variable"; src: url("/sheets/letters-latin.woff2") format("woff2"); font-weight: 1 1000; font-display: swap;
  unicode-range: U+0000-00FF, U+0152-0153, U+02C6, U+02DA, U+02DC, U+2000-206F, U+20AC, U+2122, U+2212; }
@font-face { font-family: "Ysabeau Office Variable"; src: url("/sheets/letters-greek.woff2") format("woff2"); font-weight: 1 1000; font-display: swap; unicode-range: U+0370-03FF; }
:root { color-scheme: only light; --ink: #24221e; --soft: #57534a; --line: #827d72; --hair: #d3d0c7; --accent: #5a2d6e; --wash: #efeeea; --grey: #ababab; --wool: #fff; }
* { box-sizing: border-box; }
html { background: #fff; }
body { margin: 0 auto; max-width: 210mm; padding: 15mm 16px; color: var(--ink); font: 500 17px/1.45 "Ysabeau Office Variable", "Gill Sans Nova", "Gill Sans", Optima, Candara, "Segoe UI", system-ui, sans-serif; font-variant-numeric: tabular-nums lining-nums; }
header { display: flex; justify-content: space-between; align-items: center; gap: 16px; flex-wrap: wrap; }
header p { margin: 0; }
.name { display: flex; align-items: center; gap: 12px; font-weight: 700; font-size: 20px; }
.soft, .small { color: var(--soft); }
.small { font-size: 15px; }
.claim { display: flex; align-items: center; gap: 20px; margin: 28px 0 12px; }
h1 { margin: 0; font-size: 38px; line-height: 1.1; font-weight: 700; letter-spacing: -0.012em; text-wrap: balance; }
.lead { font-size: 21px; line-height: 1.36; margin: 0 0 20px; text-wrap: pretty; }
dl { margin: 0; border-top: 2px solid var(--ink); }
dl div { display: grid; grid-template-columns: 8.5rem 1fr; gap: 12px; padding: 8px 0; border-bottom: 1px solid var(--hair); }
dt { color: var(--soft); }
dd { margin: 0; }
.strong { font-weight: 750; }
section { border-top: 2px solid var(--ink); margin-top: 28px; padding-top: 8px; break-inside: avoid; }
h2 { font-size: 19px; font-weight: 750; margin: 0 0 8px; }
.pictures { display: grid; grid-template-columns: minmax(0, 1fr) 220px; gap: 36px; align-items: start; }
.picture svg { width: 100%; height: auto; display: block; }
.pair { background: var(--grey); padding: 16px; print-color-adjust: exact; -webkit-print-color-adjust: exact; forced-color-adjust: none; }
.pair svg { display: block; width: 100%; height: 92px; }
.ends { display: flex; justify-content: space-between; gap: 12px; font-size: 14px; color: var(--soft); margin: 4px 0 8px; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 16px; }
.fit th { white-space: normal; vertical-align: bottom; }
th { font-weight: 500; color: var(--soft); font-size: 15px; text-align: right; padding: 4px 8px; border-bottom: 1px solid var(--ink); white-space: nowrap; }
td { text-align: right; padding: 5px 8px; border-bottom: 1px solid var(--hair); white-space: nowrap; }
th:first-child, td:first-child { text-align: left; padding-left: 0; }
td:last-child, th:last-child { padding-right: 0; }
tbody tr:last-child td { border-bottom: 1px solid var(--ink); }
tr.chosen { background: var(--wash); font-weight: 750; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
.outside { font-weight: 750; border-bottom: 2.5px solid var(--ink); }
footer { border-top: 2px solid var(--ink); margin-top: 28px; padding-top: 12px; font-size: 15px; }
footer p { margin: 0 0 8px; }
ul { margin: 0; padding-left: 1.1em; }
a { color: var(--accent); }
.standing { border: 3px solid var(--ink); padding: 8px 12px; margin: 16px 0 0; }
.standing p { margin: 0; }
.invented { border-left: 4px solid var(--ink); padding-left: 12px; margin: 20px 0 0; }
@media (max-width: 719px) {
  body { padding-top: 16px; }
  h1 { font-size: 29px; }
  .lead { font-size: 19px; }
  .claim { align-items: flex-start; flex-direction: column; gap: 8px; }
  .pictures { grid-template-columns: minmax(0, 1fr); gap: 20px; }
  dl div { grid-template-columns: 1fr; gap: 0; }
}
@page { size: A4; margin: 13mm 17mm; }
@media print {
  body { padding: 0; font-size: 10pt; max-width: none; }
  h1 { font-size: 29pt; }
  .lead { font-size: 13pt; }
  h2 { font-size: 12pt; }
  table, th, .small, footer, .ends { font-size: 9pt; }
  .screen { display: none; }
  section { margin-top: 16px; }
}
`
