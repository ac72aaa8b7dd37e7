import { svgOf } from '../drawing/svg.ts'
import { escaped } from '../markup-text.ts'
import type { Block, OnPage, Section } from './block.ts'
import { type Code, codeSideMm, runsOf } from './code.ts'
import { list, paragraph, table } from './html-text.ts'
import { type SheetOrder, sheetOf } from './sheet-of.ts'
import { SHEET_STYLE } from './sheet-style.ts'

/** The sheet a maker takes to the saw, as a page of its own: it asks no other host and prints on A4 and Letter. */
export function htmlSheet(order: Omit<SheetOrder, 'paper'>): string {
  // Its pictures are sized in millimetres; what prints them decides on the paper.
  const { title, verdict, said, answer, sections } = sheetOf({ ...order, paper: 'A4' })
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>${SHEET_STYLE}</style>
</head>
<body>
<h1>${escaped(title)}</h1>
<p class="verdict ${verdict}">${said}</p>
${paragraph(answer)}
${sections.map(sectionOf).join('\n')}
</body>
</html>
`
}

function sectionOf({ heading, blocks }: Section): string {
  const inside = blocks.map(blockOf).filter((html) => html !== '')
  if (inside.length === 0) return ''
  const kind = blocks.some(liesAcross) ? ' class="across"' : ''
  return `<section${kind}><h2>${escaped(heading)}</h2>\n${inside.join('\n')}</section>`
}

/** Drawings that are wider than high get paper on its side, so that their type stays large. */
const liesAcross = (block: Block): boolean =>
  block.kind === 'pages' &&
  block.instead.some((one) => one.kind === 'drawing' && one.drawing.widthMm > one.drawing.heightMm)

function blockOf(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return `<h3>${escaped(block.text)}</h3>`
    case 'list':
      return list(block.items)
    case 'caution':
      return `<p class="caution">${escaped(block.text)}</p>`
    case 'finding':
      return `<div class="finding ${block.severity}"><p><strong>${block.severity}:</strong> ${escaped(block.message)}</p>${list(block.remedies)}</div>`
    case 'chart':
      return block.svg
    case 'pages':
      return block.instead.map(onPage).join('\n')
    case 'code':
      return codeOf(block)
    default:
      return onPage(block)
  }
}

function onPage(block: OnPage): string {
  switch (block.kind) {
    case 'paragraph':
      return paragraph(block.text)
    case 'table':
      return table(block.columns, block.rows)
    case 'drawing':
      return svgOf(block.drawing, block.id)
    case 'true-size':
      return `<div class="true-size">${svgOf(block.drawing, block.id)}</div>`
  }
}

function codeOf({ link, code, says }: { link: string; code: Code; says: readonly string[] }): string {
  const side = codeSideMm(code)
  const modules = side / code.moduleMm
  const path = runsOf(code)
    .map(({ x, y, length }) => `M${x} ${y}h${length}v1h-${length}z`)
    .join('')
  return `<div class="code"><a href="${escaped(link)}"><svg class="true-size" xmlns="http://www.w3.org/2000/svg" role="img" aria-label="Code that opens this design" width="${side}mm" height="${side}mm" viewBox="0 0 ${modules} ${modules}" shape-rendering="crispEdges"><rect width="100%" height="100%" fill="#fff"/><path d="${path}"/></svg></a><div>${says.map(paragraph).join('')}</div></div>`
}
