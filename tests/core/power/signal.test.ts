import { expect, test } from 'vitest'
import {
  capacitorForCornerUf,
  cornerHz,
  couplingResistanceOhm,
  type Placement,
} from '../../../src/core/power/coupling.ts'
import { CONSUMER_LINE_V, gainStructure } from '../../../src/core/power/gain.ts'
import { sharedGroundError } from '../../../src/core/power/shared-ground.ts'
import { attenuationDb, type LoadedControl, type Taper, trackShare } from '../../../src/core/power/volume.ts'
import { holdRows } from './hold-rows.ts'

interface ControlInputs {
  resistanceKohm: number
  taper: Taper
  inputResistanceKohm?: number
  sourceResistanceOhm?: number
}

const controlOf = (inputs: ControlInputs): LoadedControl => ({
  resistanceOhm: 1000 * inputs.resistanceKohm,
  taper: inputs.taper,
  inputResistanceOhm: 1000 * (inputs.inputResistanceKohm ?? Number.POSITIVE_INFINITY),
  sourceResistanceOhm: inputs.sourceResistanceOhm ?? 0,
})

const audio = (inputs: ControlInputs & { positions: number[] }) => ({
  track: inputs.positions.map((turn) => trackShare(inputs.taper, turn)),
  attenuationDb: inputs.positions.map((turn) => attenuationDb(controlOf(inputs), turn)),
})

holdRows('volume', {
  'volume-loading-': (inputs) => ({ attenuationDb: attenuationDb(controlOf(inputs), inputs.position) }),
  'volume-audio-': audio,
  'volume-fake-': (inputs) => {
    const control = controlOf({ ...inputs, inputResistanceKohm: inputs.resistorWiperToGroundKohm })
    return { attenuationDb: attenuationDb(control, inputs.position) }
  },
})

const placed = (
  inputs: ControlInputs & { position: number; placement: Placement; inputCapacitorUf: number },
) => {
  const ohms = couplingResistanceOhm(controlOf(inputs), inputs.position, inputs.placement)
  return {
    effectiveResistanceKohm: ohms / 1000,
    cornerHz: cornerHz(inputs.inputCapacitorUf, ohms),
    passbandDb: attenuationDb(controlOf(inputs), inputs.position),
  }
}

holdRows('coupling', {
  'coupling-': ({ inputCapacitorUf, resistanceKohm }) => ({
    cornerHz: cornerHz(inputCapacitorUf, 1000 * resistanceKohm),
  }),
  'coupling-before-control': placed,
  'coupling-after-wiper': placed,
  'coupling-output-capacitor': (inputs) => ({
    capacitorUf: capacitorForCornerUf(inputs.cornerHz, inputs.loadOhm),
  }),
})

holdRows('gain', {
  'gain-': ({ sourceLevelV, gainDb, supplyVoltageV, output }) => ({
    ...gainStructure(sourceLevelV, gainDb, supplyVoltageV, {
      output,
      outputResistanceOhm: 0,
      largestDuty: 1,
    }),
  }),
  'consumer-line': () => ({ voltageV: CONSUMER_LINE_V }),
})

holdRows('ground', {
  'shared-supply-ground': (inputs) => {
    const error = sharedGroundError(
      inputs.supplyCurrentA,
      inputs.supplyGroundOhm,
      inputs.audioShieldOhm,
      inputs.sourceLevelV,
    )
    return { ...error, errorAtOutputV: error.errorV * 10 ** (inputs.gainDb / 20) }
  },
})

test('an open knob on an ideal source loses nothing, whatever hangs on it', () => {
  expect(
    attenuationDb(controlOf({ resistanceKohm: 50, taper: 'audio', inputResistanceKohm: 1 }), 1),
  ).toBeCloseTo(0, 12)
})
