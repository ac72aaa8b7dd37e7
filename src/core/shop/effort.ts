/** Work spent on every layout, and a second of effort more, in pieces squared. Measured; a machine may take twice as long. */
const USUAL_WORK = 4e6
const WORK_PER_SECOND = 7e7

/**
 * How much the search may try, in pieces squared: work is counted, not timed, so that the same request gives the same
 * layout on every machine.
 */
export const workOf = (seconds: number): number => USUAL_WORK + WORK_PER_SECOND * seconds
