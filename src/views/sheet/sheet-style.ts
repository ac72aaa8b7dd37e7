/** Ink on paper first: the page is printed more often than read on a screen. */
export const SHEET_STYLE = `
@page { size: A4; margin: 12mm; }
body { font: 11pt/1.45 system-ui, sans-serif; color: #1a1a1a; background: #fff; max-width: 186mm; margin: 0 auto; padding: 4mm; }
h1 { font-size: 18pt; margin: 0 0 2mm; }
h2 { font-size: 13pt; border-bottom: 1px solid #1a1a1a; margin: 7mm 0 2mm; }
h3 { font-size: 11pt; margin: 3mm 0 1mm; }
h1, h2, h3 { break-after: avoid; }
table { border-collapse: collapse; width: 100%; font-size: 9.5pt; }
th, td { border-bottom: 1px solid #bbb; padding: 1mm 2mm 1mm 0; text-align: left; vertical-align: top; }
tr { break-inside: avoid; }
td.number { font-variant-numeric: tabular-nums; }
.verdict { font-size: 14pt; font-weight: bold; border: 2px solid #1a1a1a; padding: 2mm 4mm; display: inline-block; margin: 0; }
.verdict.blocked { background: #1a1a1a; color: #fff; print-color-adjust: exact; }
.finding { border-left: 3px solid #767676; padding-left: 3mm; margin: 2mm 0; break-inside: avoid; }
.finding.blocker, .finding.warning { border-left-color: #1a1a1a; border-left-width: 5px; }
.finding p, .finding ul { margin: 0; }
.caution { border: 1px solid #1a1a1a; padding: 1mm 3mm; margin: 1mm 0; break-inside: avoid; }
.caution::before { content: "Caution. "; font-weight: bold; }
.steps > li { margin-bottom: 2mm; }
svg { max-width: 100%; height: auto; break-inside: avoid; }
`
