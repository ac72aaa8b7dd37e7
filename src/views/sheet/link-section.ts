import type { Design } from '../../schema/design.ts'
import { designLink } from '../design-link.ts'
import type { Section } from './block.ts'
import { codeOf } from './code.ts'

const HEADING = 'Back to the design'

const BY_FILE =
  'Keep the design as a file as well: the page of the service opens it again under "Open a saved design".'

/** Hosts that only the computer itself reaches. */
const OWN = /\/\/(localhost|127\.|\[::1\])/

/** A code that opens the design, or how to get at it without one. */
export function linkSection(design: Design, origin: string): Section {
  const link = designLink(origin, design)
  const code = codeOf(link)
  if (code === null)
    return {
      heading: HEADING,
      blocks: [
        {
          kind: 'paragraph',
          text: `This design is too long for a code that could be read from paper. ${BY_FILE}`,
        },
      ],
    }
  const where = OWN.test(link)
    ? `The code leads to ${origin}, which only the computer that runs the service can reach.`
    : `The code leads to ${origin}; what scans it has to be in a network that reaches it.`
  return {
    heading: HEADING,
    blocks: [
      {
        kind: 'code',
        link,
        code,
        says: [
          'Scan it to open this very design, to change it and to check it again. It holds the design itself; nothing is stored anywhere.',
          where,
          BY_FILE,
        ],
      },
    ],
  }
}
