import type { PatchStep } from '../../schema/frame.ts'
import { CELL_V, packVoltages } from '../power/battery.ts'
import { loopResistanceOhm } from '../power/cable.ts'
import { fuseWithinA } from '../power/protection.ts'
import { neededRatingV } from '../power/reservoir.ts'
import { ampere, volt } from '../say.ts'
import type { PowerFacts } from './power-facts.ts'
import { put, putWithin, type Remedy, remedy, takeOut } from './remedy.ts'

/** Floating point must not push a current to the next tenth. */
const DUST = 1e-9
const upToTenthA = (value: number): number => Math.ceil(10 * value - DUST) / 10

/** A lead of hardly less resistance is not worth changing. Common practice, no source. */
const WORTHWHILE_SHARE = 0.98
/** Currents of sources and switches, A: the ends of the contract. */
export const CURRENTS_A = [0.01, 100] as const

/** The gauge that loses 5 % of the voltage, where the lead of the request is thinner; null else. */
function thickerGaugeAwg({ sections, source, boardMinimumV, supply: { cable } }: PowerFacts): number | null {
  const { leadGaugeAwg, cableOhm, lowestSocketV } = sections.supply
  // No lead helps a board that wants more than there is before the lead.
  const canHelp = (lowestSocketV ?? source.voltageV) > boardMinimumV
  if (cable === undefined || leadGaugeAwg === null || !canHelp) return null
  const { areaMm2: _, ...lead } = cable
  const thickerOhm = loopResistanceOhm({ ...lead, gaugeAwg: leadGaugeAwg })
  return thickerOhm < WORTHWHILE_SHARE * cableOhm ? leadGaugeAwg : null
}

function thickerLead({ supply: { cable } }: PowerFacts, gaugeAwg: number): PatchStep[] {
  return [
    ...(cable?.areaMm2 === undefined ? [] : [takeOut('/supply/cable/areaMm2')]),
    put('/supply/cable/gaugeAwg', gaugeAwg),
  ]
}

/** Against a lead that leaves too little. */
export function leadRemedies(facts: PowerFacts): Remedy[] {
  const gauge = thickerGaugeAwg(facts)
  return [
    gauge === null
      ? 'Use a shorter, thicker supply lead with fewer plugs.'
      : remedy(
          `Use a thicker supply lead, ${gauge} AWG or thicker, or a shorter one.`,
          thickerLead(facts, gauge),
        ),
    'Set a lower volume limit or wire the drivers for a higher impedance.',
  ]
}

/** Steps from a socket, which gives what its standard says, to a source of the same voltage with a label of its own. */
function unsocketed({ source, supply }: PowerFacts): PatchStep[] {
  if (source.port === undefined && source.kind !== 'computer-port') return []
  return [
    ...(source.kind === 'computer-port' ? [put('/supply/kind', 'charger')] : []),
    ...(supply.port === undefined ? [] : [takeOut('/supply/port')]),
    put('/supply/voltageV', source.voltageV),
  ]
}

/** A stronger source of the same voltage. */
export function stronger(facts: PowerFacts, text: string, leastA: number): Remedy {
  const limit = putWithin('/supply/currentLimitA', upToTenthA(leastA), CURRENTS_A)
  return remedy(text, limit === null ? null : [...unsocketed(facts), ...limit])
}

/** Most and least cells in series whose voltages, full and nominal, a board stands. */
function cellsFor({ amplifier }: PowerFacts): { least: number; most: number } {
  return {
    least: Math.ceil((amplifier.minimumSupplyV ?? 0) / CELL_V.nominal - DUST),
    most: Math.floor((amplifier.maximumSupplyV ?? Number.POSITIVE_INFINITY) / CELL_V.full + DUST),
  }
}

/** Whether the reservoir, if its marking is known, bears a source of another voltage. */
const isBorne = ({ supply, reservoirUf }: PowerFacts, voltageV: number, highestVoltageV: number): boolean =>
  reservoirUf === 0 ||
  (supply.reservoirRatingV ?? Number.POSITIVE_INFINITY) >= neededRatingV({ voltageV, highestVoltageV })

/** A pack of so many cells; the voltage follows from them. */
function packOf(cells: number, facts: PowerFacts): PatchStep[] | null {
  const { supply } = facts
  const { nominalV, fullV } = packVoltages(cells)
  if (cells < 1 || cells > 20 || !isBorne(facts, nominalV, fullV)) return null
  return [
    ...(supply.voltageV === undefined ? [] : [takeOut('/supply/voltageV')]),
    put('/supply/cellsInSeries', cells),
  ]
}

const isWithin = (voltageV: number, { amplifier }: PowerFacts): boolean =>
  voltageV >= (amplifier.minimumSupplyV ?? 0) &&
  voltageV <= (amplifier.maximumSupplyV ?? Number.POSITIVE_INFINITY)

/** A plain source of the voltage that the board is meant for, else of the nearest one that it stands. */
export function otherVoltage(facts: PowerFacts, limitV: number): Remedy {
  const { amplifier, source } = facts
  const meantV = amplifier.supplyVoltageV
  const voltageV = meantV !== undefined && isWithin(meantV, facts) ? meantV : limitV
  if (voltageV === source.voltageV) return 'Use a supply of the voltage of the board.'
  const isPlain = source.port === undefined && source.kind !== 'computer-port'
  const stands = isPlain && isBorne(facts, voltageV, voltageV)
  return remedy(`Use a supply of ${volt(voltageV)}.`, stands ? [put('/supply/voltageV', voltageV)] : null)
}

/** Cells in place of those of the request: as many as the board stands full, or as few as it needs. */
export function otherCells(facts: PowerFacts, which: 'fewer' | 'more'): Remedy {
  const { least, most } = cellsFor(facts)
  const cells = which === 'fewer' ? most : least
  const text = `Use ${which} cells in series`
  if (cells < Math.max(1, least) || cells > most) return `${text}.`
  return remedy(`${text}: ${cells}.`, packOf(cells, facts))
}

/** One cell more, where the board stands the full pack. */
export function oneCellMore(facts: PowerFacts): Remedy {
  const cells = (facts.source.cellsInSeries ?? 0) + 1
  const { fullV } = packVoltages(cells)
  const text = 'Use one more cell in series, if the board stands the full pack'
  const stands = facts.amplifier.maximumSupplyV !== undefined && isWithin(fullV, facts)
  return remedy(`${text}, ${volt(fullV)}.`, stands ? packOf(cells, facts) : null)
}

/** The source that gives in before its fuse. */
export function fuseRemedies(facts: PowerFacts, limitA: number): Remedy[] {
  const { programmeA, sineA, fuseA } = facts.sections.supply
  const within = fuseWithinA(limitA, programmeA)
  return [
    ...(within === null
      ? []
      : [
          `Fit ${ampere(within)}, slow: it carries the programme and blows before the source gives in; a test tone at full volume may blow it.`,
        ]),
    ...(facts.source.kind === 'cells'
      ? ['Never leave out the fuse at a cell; its protection board is the second guard, not the first.']
      : ['Leave it to the source, when its label says that it limits or switches off by itself.']),
    stronger(
      facts,
      `Use a source for more than ${ampere(fuseA)}; a full sine takes ${ampere(sineA)}.`,
      fuseA,
    ),
  ]
}
