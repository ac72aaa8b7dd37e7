import type { Supply } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { cleanOutput, largestClaimW, peakCurrentA, powerAt10PercentW } from './amplifier.ts'
import { bankHours, keepAlive, packHours } from './battery.ts'
import type { BudgetInput, KnownOfBuild } from './budget-input.ts'
import { boardVoltageV, contactsOhm, largestDeliverableW, leastAreaMm2 } from './cable.ts'
import { outputCapacitor } from './output-capacitor.ts'
import { fuseA } from './protection.ts'
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
export function supplySection(input: BudgetInput, supply: Supply, cleanPowerW: number): SupplySection {
  const { source, cableOhm, cutoffMa } = input
  const draw = drawOf(input, cleanPowerW)
  const programmeA = averageCurrentA(draw, CREST_DB[input.programme])
  const eighthPowerA = averageCurrentA(draw, EIGHTH_POWER_CREST_DB)
  const sineA = averageCurrentA(draw, CREST_DB.sine)
  const peakA = peakSupplyCurrentA(draw)
  const awake = cutoffMa === null ? null : keepAlive(source.voltageV, cutoffMa, draw.quiescentCurrentMa)
  const atBoard = (currentA: number) => boardVoltageV(source.voltageV, cableOhm, currentA * source.voltageV)
  return {
    voltageV: source.voltageV,
    lowestVoltageV: source.lowestVoltageV,
    highestVoltageV: source.highestVoltageV,
    currentLimitA: source.currentLimitA,
    idleA: draw.quiescentCurrentMa * 1e-3,
    programmeA,
    eighthPowerA,
    sineA,
    peakA,
    boardVoltageV: atBoard(programmeA),
    boardVoltageAtPeakV: atBoard(peakA),
    cableOhm,
    leastAreaMm2: leastArea(supply, source.voltageV, sineA),
    largestDeliverableW: largestDeliverableW(source.voltageV, cableOhm),
    marginA: source.currentLimitA === null ? null : source.currentLimitA - programmeA,
    runningTimeH: runningTimeH(supply, source, eighthPowerA),
    switchesOffWhenQuiet: cutoffMa === null ? null : awake !== null,
    keepAliveOhm: awake?.resistorOhm ?? null,
    keepAliveW: awake?.dissipationW ?? null,
    fuseA: fuseA(sineA),
  }
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
export function powerSection(input: BudgetInput, known: KnownOfBuild): PowerSection {
  const { amplifier, source, loadOhm } = input
  const clean = cleanOutput(amplifier, source.voltageV, loadOhm)
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
    claimedPowerW,
    largestClaimW: largestClaim,
    claimedPossible: claimedPowerW === null ? null : claimedPowerW <= largestClaim,
    driverPowerW: clean.powerW * largestShare(known),
    ...outputCapacitor(input),
  }
}
