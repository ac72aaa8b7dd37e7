import type { Assumption, Finding } from '../schema/frame.ts'
import type { Formula } from './working.ts'

/** A fault of the request: where it is and what was expected. */
export interface Fault {
  at: string
  message: string
}

/** What every calculation returns: its sections and what the maker should know about them. */
export interface Outcome<Sections> {
  sections: Sections
  findings: Finding[]
  assumptions: Assumption[]
  cautions: string[]
  working: Formula[]
}

/** A calculation that cannot begin, with every reason. */
export interface Refusal {
  faults: Fault[]
}

export const isRefusal = (result: object): result is Refusal => 'faults' in result

/** Faults that several parts of a calculation found, each once. */
export const eachOnce = (faults: readonly Fault[]): Fault[] =>
  faults.filter(
    (fault, i) => faults.findIndex((other) => other.at === fault.at && other.message === fault.message) === i,
  )
