import type { Box } from '../../schema/box.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import type { BoxFacts } from '../findings/box-facts.ts'
import { closing } from '../findings/closing.ts'
import type { PortFacts } from '../findings/port-facts.ts'
import { isRefusal } from '../outcome.ts'
import { type Assembled, assemble, type BoxInput } from './assemble.ts'
import { reachMm, straightMm } from './elbows.ts'
import type { Judgement } from './judgement.ts'
import type { FullDrive } from './limits.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { adjustable, fitsFilled, tuningSteps } from './port-changes.ts'
import { midBandGain, relativeLevelDb, systemFigures } from './system-figures.ts'
import { tubeAirL } from './tuned-port.ts'
import { isReachable } from './tuning.ts'

/** What the rules about ports look at; null without a port. */
export function portFacts(
  input: BoxInput,
  assembled: Assembled,
  pipeResonanceHz: number | null,
  fitJudged: boolean,
): PortFacts | null {
  const { port, inner } = assembled.enclosure
  if (port === null) return null
  return {
    at: '/port',
    ...adjustable(input, assembled),
    tuningHz: port.tuningHz,
    lengthMm: port.lengthMm,
    highestTuningHz: port.highestTuningHz,
    pipeResonanceHz,
    panelThicknessMm: input.box.panelThicknessMm ?? null,
    insideDepthMm: fitJudged ? null : (inner?.depthMm ?? null),
    diameterMm: port.geometry.diameterMm,
    reachMm: reachMm(input.port ?? {}, port.lengthMm ?? 0, input.box.panelThicknessMm ?? 0),
    straightMm: straightMm(input.port ?? {}, port.lengthMm ?? 0),
    netVolumeL: assembled.enclosure.netVolumeL,
    tubeAirL: tubeAirL(port),
  }
}

/** What the rules about driver and box look at. */
export function boxFacts(
  input: BoxInput,
  assembled: Assembled,
  judgement: Judgement,
  tuning: BoxTuningSections['tuning'],
  drive: FullDrive,
): BoxFacts {
  const { lowestHz } = judgement
  const { speaker, contradiction } = assembled
  return {
    kind: input.box.kind,
    driverAt: input.driverAt,
    driveVoltageV: judgement.voltageV,
    drive: judgement.drive,
    closing: closing(input),
    closedPeakDb: () => closedPeakDb(input, judgement.voltageV),
    tuning: (tuningHz) => tuningSteps(input, assembled, tuningHz),
    fsHz: speaker.driver.fsHz,
    lining: input.box.lining ?? 'none',
    absorptionGiven: input.box.absorptionQ !== undefined,
    fitsFilled: fitsFilled(input, assembled),
    f6Hz: tuning.f6Hz,
    qts: tuning.qts,
    h: tuning.h ?? null,
    peakDb: tuning.peakDb,
    peakHz: tuning.peakHz,
    airSpeedMPerS: speaker.opening?.kind === 'port' ? drive.airSpeed.value : 0,
    airSpeedAtHz: drive.airSpeed.atHz,
    tuningHz: speaker.opening === null ? null : speaker.boxHz,
    unloadedMm: drive.unloadedMm,
    heldBelowBandMm: drive.heldBelowBandMm,
    radiatorMm: drive.radiatorMm,
    radiatorXmaxMm: input.passiveRadiator?.xmaxMm ?? null,
    wanted:
      judgement.wantedQtc === null
        ? null
        : { qtc: judgement.wantedQtc, reachable: isReachable(speaker, judgement.wantedQtc) },
    drivePower: judgement.powerJudged ? null : drivePower(input, speaker, judgement.voltageV),
    lowest: lowestHz === null ? null : { hz: lowestHz, levelDb: relativeLevelDb(speaker, lowestHz) },
    contradiction,
    // Last: adding members to a copied object takes long.
    ...drive.limits,
  }
}

/** Power a full sine puts into the resistance of one driver, beside its rating; null without one. */
function drivePower(input: BoxInput, speaker: Loudspeaker, voltageV: number): BoxFacts['drivePower'] {
  const { ratedPowerW } = input.driver
  if (ratedPowerW === undefined) return null
  const driverV =
    voltageV *
    midBandGain(speaker) *
    (speaker.circuit.reOhm / (speaker.circuit.reOhm + speaker.circuit.sourceOhm))
  return { powerW: driverV ** 2 / speaker.driver.reOhm, ratedW: ratedPowerW }
}

/** The peak of the same box without its opening, dB; null where such a box cannot be. */
function closedPeakDb(input: BoxInput, voltageV: number): number | null {
  const box: Box = { ...input.box, kind: 'closed', portQ: null }
  const assembled = assemble({ ...input, box, port: undefined, passiveRadiator: undefined })
  return isRefusal(assembled) ? null : systemFigures(assembled.speaker, voltageV).peakDb
}
