import { PROBLEMS, type ProblemName } from '../api/problem.ts'
import { escaped } from '../views/markup-text.ts'
import { page } from './html.ts'

/** The page that the `type` of a problem leads to. */
export function problemPage(name: ProblemName): string {
  const { title, status, about } = PROBLEMS[name]
  return page(
    title,
    `<h1>${escaped(title)}</h1>
<p>Status ${status}. ${escaped(about)}</p>
<p><a href="/docs#problems">All problems</a></p>`,
  )
}
