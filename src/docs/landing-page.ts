import type { ContractDocument } from '../api/contract-document.ts'
import { escaped, page } from './html.ts'

/** The first page: what the service is, one example to copy and one to click, and where to read on. */
export function landingPage(contract: ContractDocument, origin: string): string {
  const calculations = Object.entries(contract.paths).flatMap(([path, { post }]) =>
    post === undefined
      ? []
      : [`<li><a href="/docs#${post.operationId}"><code>${path}</code></a> ${escaped(post.summary)}</li>`],
  )
  const example = '/v1/port?netVolumeL=3&innerDiameterMm=26&tuningHz=105'
  return page(
    contract.info.title,
    `<h1>${escaped(contract.info.title)}</h1>
<p>${escaped(contract.info.description)}</p>
<h2>Two worked examples</h2>
<p>Will a whole build work? Drivers, wiring, box, amplifier, supply and boards go in as one document; out comes one verdict with every reason: <a href="/docs#designCheck">a shelf pair, as a request to copy</a>.</p>
<p>How long must a tube of 26 mm be to tune 3 litres to 105 Hz?</p>
<ul>
<li><a href="${escaped(`${example}&format=text`)}">The answer in one sentence</a></li>
<li><a href="${escaped(`${example}&working=true`)}">The whole answer with its working, as JSON</a></li>
</ul>
<p>In a spreadsheet cell, the bare number:</p>
<pre><code>${escaped(`=NUMBERVALUE(WEBSERVICE("${origin}${example}&pick=port.lengthMm");".")`)}</code></pre>
<p>Ten such cells with their inputs: <a href="/docs/example-sheet.fods">an example workbook</a>.</p>
<h2>All calculations</h2>
<ul>${calculations.join('\n')}</ul>
<p>Read on in the <a href="/docs">documentation</a> or the <a href="/openapi.json">contract</a>.</p>`,
  )
}
