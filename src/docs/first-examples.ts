import { escaped } from '../views/markup-text.ts'

/** What to try first: one build to copy, one sentence to click, one cell to paste. */
export function firstExamples(origin: string): string {
  const example = '/v1/port?netVolumeL=3&innerDiameterMm=26&tuningHz=105'
  return `<h2 id="first">Two worked examples</h2>
<p>Will a whole build work? The <a href="/">touch page</a> asks for drivers, wiring, box, amplifier, supply and boards and shows one verdict with every reason. A program sends the same as one document: <a href="#designCheck">a shelf pair, as a request to copy</a>.</p>
<p>How long must a tube of 26 mm be to tune 3 litres to 105 Hz?</p>
<ul>
<li><a href="${escaped(`${example}&format=text`)}">The answer in one sentence</a></li>
<li><a href="${escaped(`${example}&working=true`)}">The whole answer with its working, as JSON</a></li>
</ul>
<p>In a spreadsheet cell, the bare number:</p>
<pre><code>${escaped(`=NUMBERVALUE(WEBSERVICE("${origin}${example}&pick=port.lengthMm");".")`)}</code></pre>
<p>Ten such cells with their inputs: <a href="/docs/example-sheet.fods">an example workbook</a>.</p>`
}
