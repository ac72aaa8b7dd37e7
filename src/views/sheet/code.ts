import qrcode from 'qrcode-generator'

/** A QR code as its dark modules, row by row from above (ISO/IEC 18004). */
export interface Code {
  dark: readonly (readonly boolean[])[]
  /** Side of one module on paper. */
  moduleMm: number
}

/** Longest link that is printed as a code; a telephone reads the smallest of them still from a hand's length. */
const LONGEST_LINK = 1465
/**
 * Up to here the code mends up to 15 % of itself (level M, 97 modules at most); a longer link gets level L, 7 %, so
 * that its modules stay as large: 125 of them at most.
 */
const LONGEST_AT_M = 660
/** Printers of 300 dots an inch draw it with six dots; readers want 0.4 or more (common practice, no source). */
const MODULE_MM = 0.5
/** Modules of bare paper around a code. ISO/IEC 18004, from memory. */
export const QUIET_MODULES = 4

/** The code of a link; null for one that is too long to be read from paper. */
export function codeOf(link: string): Code | null {
  if (link.length > LONGEST_LINK) return null
  const code = qrcode(0, link.length > LONGEST_AT_M ? 'L' : 'M')
  code.addData(link, 'Byte')
  code.make()
  const count = code.getModuleCount()
  const dark = Array.from({ length: count }, (_, row) =>
    Array.from({ length: count }, (_, column) => code.isDark(row, column)),
  )
  return { dark, moduleMm: MODULE_MM }
}

/** Side of a code with the bare paper around it. */
export const codeSideMm = ({ dark, moduleMm }: Code): number => (dark.length + 2 * QUIET_MODULES) * moduleMm

/** Dark modules side by side in a row, in modules from the upper left corner of the bare paper. */
export interface Run {
  x: number
  y: number
  length: number
}

export const runsOf = ({ dark }: Code): Run[] =>
  dark.flatMap((row, y) => {
    const runs: Run[] = []
    row.forEach((isDark, x) => {
      const last = runs.at(-1)
      if (!isDark) return
      if (last !== undefined && last.x + last.length === x + QUIET_MODULES) last.length++
      else runs.push({ x: x + QUIET_MODULES, y: y + QUIET_MODULES, length: 1 })
    })
    return runs
  })
