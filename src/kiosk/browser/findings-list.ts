import type { Finding } from '../../schema/frame.ts'
import type { Change } from './draft.ts'
import { button, make } from './make.ts'

const WORDS: Record<Finding['severity'], string> = { blocker: 'Stop', warning: 'Mind', note: 'Know' }

/** What a finding brings for one touch. */
type Fix = { do: string; patch: readonly Change[] }

/** The findings with their remedies; a remedy that is a clear change of the design has a button for it. */
export function findingsList(
  findings: readonly Finding[],
  take: (fix: Fix) => void,
  show: (pointer: string) => void,
): HTMLElement[] {
  return findings.map((finding) =>
    make(
      'li',
      { class: `finding ${finding.severity}` },
      make(
        'p',
        {},
        make('strong', {}, `${WORDS[finding.severity]}: `),
        finding.message,
        ' ',
        where(finding, show),
      ),
      remediesOf(finding, take),
    ),
  )
}

const where = ({ at, message }: Finding, show: (pointer: string) => void): HTMLElement =>
  button('Show me where', () => show(at), 'link', `Show me where: ${message}`)

function remediesOf({ remedies, fixes = [] }: Finding, take: (fix: Fix) => void): HTMLElement | undefined {
  if (remedies.length === 0) return undefined
  return make(
    'ul',
    { class: 'remedies' },
    remedies.map((text) => {
      const fix = fixes.find((one) => one.do === text)
      return make('li', {}, text, ' ', fix && button('Do this', () => take(fix), 'do', `Do this: ${text}`))
    }),
  )
}
