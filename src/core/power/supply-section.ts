import type { Supply } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { cleanOfClaimW, cleanOutput, largestClaimW, peakCurrentA, powerAt10PercentW } from './amplifier.ts'
import { bankHours, keepAlive, packHours } from './battery.ts'
import type { BudgetInput, KnownOfBuild } from './budget-input.ts'
import { boardVoltageV, contactsOhm, gaugeOfAreaAwg, largestDeliverableW, leastAreaMm2 } from './cable.ts'
import { fullVolume } from './full-volume.ts'
import { outputCapacitor } from './output-capacitor.ts'
import { fuseA, switchA } from './protection.ts'
import { isUsb, lowestAtDeviceV, lowestSocketV } from './source.ts'
import type { Source } from './source-of.ts'
import {
  averageCurrentA,
  CREST_DB,
  type Draw,
  EIGHTH_POWER_CREST_DB,
  peakSupplyCurrentA,
} from './supply-current.ts'

type PowerSection = PowerBudgetSections['power']
type SupplySection = PowerBudgetSections['supply']

/** Loss that a supply lead is laid out for. Common practice, no source. */
const LEAD_LOSS_SHARE = 0.05

/** What all channels draw at the clean power, the indicator counted with the idle current. */
export const drawOf = ({ amplifier, source, indicatorMa }: BudgetInput, cleanPowerW: number): Draw => ({
  channels: amplifier.channels,
  cleanPowerW,
  supplyVoltageV: source.voltageV,
  efficiency: amplifier.efficiency,
  quiescentCurrentMa: amplifier.quiescentCurrentMa + indicatorMa,
})

/** What the source must give and what arrives. See the functions for the sources of the formulas. */
export function supplySection(
  input: BudgetInput,
  supply: Supply,
  { cleanPowerW, reachedPowerW }: Pick<PowerSection, 'cleanPowerW' | 'reachedPowerW'>,
): SupplySection {
  const { source, cableOhm, cutoffMa } = input
  const draw = drawOf(input, cleanPowerW)
  const programmeA = averageCurrentA(drawOf(input, reachedPowerW), CREST_DB[input.programme])
  const eighthPowerA = averageCurrentA(draw, EIGHTH_POWER_CREST_DB)
  const sineA = averageCurrentA(draw, CREST_DB.sine)
  const peakA = peakSupplyCurrentA(draw)
  const awake = cutoffMa === null ? null : keepAlive(source.voltageV, cutoffMa, draw.quiescentCurrentMa)
  const atBoard = (currentA: number) => boardVoltageV(source.voltageV, cableOhm, currentA * source.voltageV)
  const boardVoltageAtPeakV = atBoard(peakA)
  const worstA = worstCurrentA(input)
  const areaMm2 = leastArea(supply, source.voltageV, sineA)
  return {
    voltageV: source.voltageV,
    lowestVoltageV: source.lowestVoltageV,
    highestVoltageV: source.highestVoltageV,
    levelSpanDb: levelSpanDb(source),
    ...lawfulVoltages(input, supply, programmeA),
    currentLimitA: source.currentLimitA,
    idleA: draw.quiescentCurrentMa * 1e-3,
    programmeA,
    eighthPowerA,
    sineA,
    worstA,
    peakA,
    boardVoltageV: atBoard(programmeA),
    boardVoltageAtPeakV,
    brownOutMarginV: boardVoltageAtPeakV === null ? null : boardVoltageAtPeakV - input.boardMinimumV,
    cableOhm,
    leastAreaMm2: areaMm2,
    leadGaugeAwg: areaMm2 === null ? null : gaugeOfAreaAwg(areaMm2),
    largestDeliverableW: largestDeliverableW(source.voltageV, cableOhm),
    marginA: source.currentLimitA === null ? null : source.currentLimitA - programmeA,
    runningTimeH: runningTimeH(supply, source, eighthPowerA),
    switchesOffWhenQuiet: cutoffMa === null ? null : awake !== null,
    keepAliveOhm: awake?.resistorOhm ?? null,
    keepAliveW: awake?.dissipationW ?? null,
    switchA: switchA(worstA),
    fuseA: fuseA(worstA),
  }
}

/** Average current of a full sine at the highest voltage the source may have, A: a full pack drives it hardest. */
function worstCurrentA(input: BudgetInput): number {
  const voltageV = input.source.highestVoltageV
  const full = { ...input, source: { ...input.source, voltageV } }
  return averageCurrentA(
    drawOf(full, cleanOutput(input.amplifier, voltageV, input.loadOhm).powerW),
    CREST_DB.sine,
  )
}

const levelSpanDb = ({ highestVoltageV, lowestVoltageV }: Source): number | null =>
  highestVoltageV > lowestVoltageV ? 20 * Math.log10(highestVoltageV / lowestVoltageV) : null

/** What the standard of a USB socket guarantees, and what of it reaches the board. */
function lawfulVoltages(
  { source, cableOhm }: BudgetInput,
  { cable }: Supply,
  programmeA: number,
): Pick<SupplySection, 'lowestSocketV' | 'lowestLawfulBoardV'> {
  if (!isUsb(source)) return { lowestSocketV: null, lowestLawfulBoardV: null }
  const socketV = lowestSocketV(source.port, source.voltageV)
  const lowestLawfulBoardV =
    cable === undefined
      ? lowestAtDeviceV(source.port, socketV)
      : boardVoltageV(socketV, cableOhm, programmeA * source.voltageV)
  return { lowestSocketV: socketV, lowestLawfulBoardV }
}

const leastArea = ({ cable }: Supply, voltageV: number, sineA: number): number | null =>
  cable === undefined || sineA === 0
    ? null
    : leastAreaMm2(cable.lengthM, contactsOhm(cable), voltageV, sineA, LEAD_LOSS_SHARE)

function runningTimeH(
  { capacityMah }: Supply,
  { kind, voltageV, cellsInSeries }: Source,
  currentA: number,
): number | null {
  if (capacityMah === undefined) return null
  if (kind === 'power-bank') return bankHours(capacityMah, voltageV, currentA)
  return cellsInSeries === null ? null : packHours(capacityMah, cellsInSeries, voltageV * currentA)
}

const largestShare = ({ drivers = [] }: KnownOfBuild): number =>
  drivers.length === 0 ? 1 : Math.max(...drivers.map(({ powerShare }) => powerShare))

/** What one channel can give, and what to think of the maker's claim. */
export function powerSection(
  input: BudgetInput,
  known: KnownOfBuild,
  overdriveDb: number | null,
): PowerSection {
  const { amplifier, source, loadOhm } = input
  const clean = cleanOutput(amplifier, source.voltageV, loadOhm)
  const full = fullVolume(input, clean.powerW, overdriveDb)
  const sineDrawW = averageCurrentA(drawOf(input, clean.powerW), CREST_DB.sine) * source.voltageV
  const sagging = boardVoltageV(source.voltageV, input.cableOhm, sineDrawW)
  const claimedPowerW = amplifier.ratedPowerW ?? null
  // Makers state their claim into the lowest load the board may drive.
  const claimLoadOhm = Math.min(loadOhm, amplifier.minimumLoadOhm)
  const largestClaim = largestClaimW(amplifier.output, source.voltageV, claimLoadOhm)
  return {
    cleanPowerW: clean.powerW,
    cleanVoltageV: clean.voltageV,
    peakCurrentA: peakCurrentA(amplifier, source.voltageV, input.minimumOhm),
    powerAt10PercentW: powerAt10PercentW(clean.powerW),
    cleanPowerOnLeadW: sagging === null ? null : cleanOutput(amplifier, sagging, loadOhm).powerW,
    reachedPowerW: full.peakW,
    programmePowerW: full.programmeW,
    limitedBy: full.limitedBy,
    claimedPowerW,
    claimedCleanPowerW: claimedPowerW === null ? null : cleanOfClaimW(claimedPowerW),
    largestClaimW: largestClaim,
    claimedPossible: claimedPowerW === null ? null : claimedPowerW <= largestClaim,
    clipMarginDb: overdriveDb === null ? null : -overdriveDb,
    driverPowerW: clean.powerW * largestShare(known),
    ...outputCapacitor(input),
  }
}
