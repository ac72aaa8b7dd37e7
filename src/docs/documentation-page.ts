import { type ContractDocument, METHODS, type Operation, type Parameter } from '../api/contract-document.ts'
import { PROBLEM_NAMES, PROBLEMS, problemPath } from '../api/problem.ts'
import { escaped } from '../views/markup-text.ts'
import { exampleQuery } from './example-query.ts'
import { type FieldRow, fieldRows, takesSaid } from './field-rows.ts'
import { firstExamples } from './first-examples.ts'
import { page } from './html.ts'

/** The documentation, made from the contract alone. */
export function documentationPage(contract: ContractDocument, origin: string): string {
  const operations = Object.entries(contract.paths).flatMap(([path, methods]) =>
    METHODS.flatMap((method) => {
      const operation = methods[method]
      const example = methods.post?.requestBody?.content['application/json']?.example
      return operation === undefined ? [] : [{ path, method: method.toUpperCase(), operation, example }]
    }),
  )
  const links = operations.map(
    ({ path, method, operation }) =>
      `<li><a href="#${operation.operationId}"><code>${method} ${path}</code></a> ${escaped(operation.summary)}</li>`,
  )
  return page(
    `${contract.info.title}: documentation`,
    `<h1>${escaped(contract.info.title)}</h1>
<p>${escaped(contract.info.description)}</p>
<p>The contract itself: <a href="/openapi.json"><code>/openapi.json</code></a> (OpenAPI ${escaped(contract.openapi)}).</p>
${firstExamples(origin)}
<h2>All calculations</h2>
<ul>${links.join('\n')}</ul>
${operations.map((shown) => section(contract, origin, shown)).join('\n')}
${problems()}`,
  )
}

interface Shown {
  path: string
  method: string
  operation: Operation
  /** The complete body of the calculation. */
  example: unknown
}

function section(
  contract: ContractDocument,
  origin: string,
  { path, method, operation, example }: Shown,
): string {
  const body = operation.requestBody?.content['application/json']
  const answer = operation.responses['200']?.content?.['application/json']
  const parameters = operation.parameters ?? []
  return `<section>
<h2 id="${operation.operationId}"><code>${method} ${path}</code></h2>
<p>${escaped(operation.description)}</p>
${body === undefined ? queryExample(origin, path, example) : bodyExample(origin, path, example)}
${body === undefined ? '' : table('Body', fieldRows(contract, body.schema))}
${table('Query', parameters.map(parameterRow))}
${answer === undefined ? '' : table('Answer', fieldRows(contract, answer.schema))}
</section>`
}

function bodyExample(origin: string, path: string, example: unknown): string {
  const json = JSON.stringify(example).replaceAll("'", "'\\''")
  const command = `curl -s ${origin}${path} -H 'content-type: application/json' -d '${json}'`
  return `<p>A complete request:</p>
<pre><code>${escaped(JSON.stringify(example, null, 2))}</code></pre>
<p>To try it:</p>
<pre><code>${escaped(command)}</code></pre>`
}

function queryExample(origin: string, path: string, body: unknown): string {
  return `<p>A complete request, as an address for a browser or a cell:</p>
<pre><code>${escaped(`${origin}${path}?${exampleQuery(body)}`)}</code></pre>`
}

const parameterRow = ({ name, required, description, schema }: Parameter): FieldRow => ({
  name,
  required,
  takes: takesSaid(schema),
  description: description ?? '',
})

function table(title: string, rows: readonly FieldRow[]): string {
  const cells = rows.map(
    ({ name, takes, required, description }) =>
      `<tr><th scope="row"><code>${escaped(name)}</code>${required ? '' : ' (optional)'}</th><td>${escaped(takes)}</td><td>${escaped(description)}</td></tr>`,
  )
  return `<h3>${title}</h3>
<table>
<thead><tr><th scope="col">Name</th><th scope="col">Takes</th><th scope="col">Meaning</th></tr></thead>
<tbody>
${cells.join('\n')}
</tbody></table>`
}

function problems(): string {
  const rows = PROBLEM_NAMES.map(
    (name) =>
      `<li><a href="${problemPath(name)}">${PROBLEMS[name].status} ${escaped(PROBLEMS[name].title)}</a>: ${escaped(PROBLEMS[name].about)}</li>`,
  )
  return `<h2 id="problems">Problems</h2>
<p>An error answers as <code>application/problem+json</code> (RFC 9457). A design that cannot work is no error: it answers 200 with the verdict blocked.</p>
<ul>${rows.join('\n')}</ul>`
}
