import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import type { Assumption } from '../../schema/frame.ts'
import { boxRules } from '../findings/box.ts'
import { driverDataRules } from '../findings/driver-data.ts'
import { portRules } from '../findings/port.ts'
import { apply } from '../findings/rule.ts'
import type { Outcome } from '../outcome.ts'
import type { Assembled, BoxInput } from './assemble.ts'
import type { Baffle } from './baffle.ts'
import { boxFacts, portFacts } from './box-facts.ts'
import { boxWorking } from './box-working.ts'
import { curvesOf, gridOf } from './curves.ts'
import { straightOrNull } from './elbows.ts'
import { impedanceExtremes } from './impedance-extremes.ts'
import type { Judgement } from './judgement.ts'
import { type FullDrive, fullDrive, type Ratings } from './limits.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { soundField } from './sound-field.ts'
import { systemFigures } from './system-figures.ts'
import { compareTubes } from './tube-comparison.ts'
import { pipeResonanceOf } from './tuned-port.ts'
import { suitedTo, tuningOf } from './tuning.ts'

// Halfway between the middle and the top, where a driver usually sits: common practice, no source.
const baffleOf = ({ enclosure }: Assembled): Baffle | null =>
  enclosure.outer === null
    ? null
    : {
        widthMm: enclosure.outer.widthMm,
        heightMm: enclosure.outer.heightMm,
        sourceXMm: 0,
        sourceYMm: enclosure.outer.heightMm / 6,
      }

function portSection(
  input: BoxInput,
  assembled: Assembled,
  drive: FullDrive,
  pipeResonanceHz: number | null,
): BoxTuningSections['port'] {
  const { port } = assembled.enclosure
  if (port === null) return null
  return {
    lengthMm: port.lengthMm,
    straightMm: straightOrNull(input.port ?? {}, port.lengthMm),
    effectiveLengthMm: port.effectiveLengthMm,
    areaCm2: port.totalAreaCm2,
    airSpeedMPerS: drive.airSpeed.value,
    atHz: drive.airSpeed.atHz,
    pipeResonanceHz,
  }
}

function openingRating(input: BoxInput, speaker: Loudspeaker): Ratings['opening'] {
  if (speaker.opening === null) return null
  return speaker.opening.kind === 'port'
    ? { kind: 'port' }
    : { kind: 'radiator', xmaxMm: input.passiveRadiator?.xmaxMm ?? null }
}

function impedanceSection(speaker: Loudspeaker): BoxTuningSections['impedance'] {
  const { minimum, peaks, dips } = impedanceExtremes(speaker)
  return { minimumOhm: minimum.ohm, minimumAtHz: minimum.hz, peaks, dips }
}

function tubesSection(
  input: BoxInput,
  { speaker, enclosure }: Assembled,
  { tubes }: Judgement,
  drive: FullDrive,
): BoxTuningSections['tubes'] {
  if (enclosure.port === null) return []
  const room = {
    insideDepthMm: enclosure.inner?.depthMm ?? null,
    panelThicknessMm: input.box.panelThicknessMm ?? null,
  }
  return compareTubes(tubes, speaker, enclosure.port, drive.airSpeed.value, room)
}

/**
 * Everything there is to say about an assembled loudspeaker at one drive: figures, limits, curves and findings.
 * Sources: in the files it calls.
 */
export function analyse(
  input: BoxInput,
  assembled: Assembled,
  judgement: Judgement,
): Outcome<BoxTuningSections> {
  const { speaker } = assembled
  const { voltageV, lowestHz } = judgement
  const figures = systemFigures(speaker, voltageV)
  const tuning = tuningOf(speaker, figures)
  const ratings: Ratings = {
    xmaxMm: input.driver.xmaxMm ?? null,
    ratedPowerW: input.driver.ratedPowerW ?? null,
    reOhm: speaker.driver.reOhm,
    opening: openingRating(input, speaker),
  }
  const baffle = input.space === 'baffle' ? baffleOf(assembled) : null
  const drive = fullDrive(speaker, ratings, voltageV, lowestHz ?? figures.f3Hz ?? speaker.boxHz, baffle)
  const pipeHz =
    assembled.enclosure.port === null
      ? null
      : pipeResonanceOf(assembled.enclosure.port, speaker.acousticVolumeL, speaker.air)
  const facts = boxFacts(input, assembled, judgement, tuning, drive)
  const forPort = portFacts(input, assembled, pipeHz, judgement.fitJudged)
  const unknown: Assumption[] =
    ratings.xmaxMm === null
      ? [
          {
            at: `${input.driverAt}/xmaxMm`,
            value: null,
            unit: 'mm',
            why: 'not given, so the travel of the cone is not judged',
          },
        ]
      : []
  const placed: Assumption[] =
    baffle === null
      ? []
      : [
          {
            at: '/space',
            value: baffle.sourceYMm,
            unit: 'mm',
            why: 'driver this far above the middle of the front (common practice, no source); curves and limits count the step, cut-offs and reference level are those of full space',
          },
        ]
  return {
    sections: {
      tuning,
      port: portSection(input, assembled, drive, pipeHz),
      impedance: impedanceSection(speaker),
      suitedBoxes: suitedTo(speaker, input.box, judgement.wantedQtc),
      tubes: tubesSection(input, assembled, judgement, drive),
      directivity: soundField(speaker, judgement.spacingMm, drive.limits.bandFromHz),
      limits: drive.limits,
      curves: curvesOf(speaker, ratings, voltageV, gridOf(judgement.curve), baffle),
    },
    findings: [
      ...apply(driverDataRules, facts),
      ...apply(boxRules, facts),
      ...(forPort === null ? [] : apply(portRules, forPort)),
    ],
    assumptions: [...assembled.assumptions, ...unknown, ...placed],
    cautions: [],
    working: boxWorking(speaker, assembled.enclosure.port, voltageV),
  }
}
