/**
 * Ink on paper first: the page is printed more often than read on a screen. The size of the paper is left to who
 * prints; the margin is what the pictures at true size count on.
 */
export const SHEET_STYLE = `
@page { margin: 10mm; }
@page across { size: landscape; margin: 10mm; }
* { box-sizing: border-box; }
body { font: 10.5pt/1.4 system-ui, sans-serif; color: #1a1a1a; background: #fff; max-width: 198mm; margin: 0 auto; padding: 4mm; }
h1 { font-size: 18pt; margin: 0 0 2mm; }
h2 { font-size: 13pt; border-bottom: 1px solid #1a1a1a; margin: 6mm 0 2mm; }
h3 { font-size: 11pt; margin: 3mm 0 1mm; }
h1, h2, h3 { break-after: avoid; }
p, ul { margin: 1mm 0; }
ul { padding-left: 5mm; }
table { border-collapse: collapse; width: 100%; font-size: 9.5pt; }
th, td { border-bottom: 1px solid #bbb; padding: 0.8mm 2.5mm 0.8mm 0; text-align: left; vertical-align: top; }
tr, li, p { break-inside: avoid; }
.number { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
.verdict { font-size: 14pt; font-weight: bold; border: 2px solid #1a1a1a; padding: 2mm 4mm; display: inline-block; margin: 0; }
.verdict.blocked { background: #1a1a1a; color: #fff; print-color-adjust: exact; }
.finding { border-left: 3px solid #767676; padding-left: 3mm; margin: 2mm 0; break-inside: avoid; }
.finding.blocker, .finding.warning { border-left-color: #1a1a1a; border-left-width: 5px; }
.finding p, .finding ul { margin: 0; }
.caution { border: 1px solid #1a1a1a; padding: 1mm 3mm; margin: 1mm 0; break-after: avoid; }
.caution::before { content: "Caution. "; font-weight: bold; }
svg { display: block; max-width: 100%; height: auto; break-inside: avoid; margin: 2mm 0; }
.true-size { break-inside: avoid; }
.true-size svg, svg.true-size { max-width: none; margin: 0; }
.code { display: flex; gap: 6mm; align-items: center; break-inside: avoid; }
.code svg { flex: none; }
@media print {
  body { max-width: none; margin: 0; padding: 0; }
  .across { page: across; }
  .across h2 { margin-top: 0; }
  .across svg { max-height: 174mm; width: auto; margin: 0 auto; }
}
`
