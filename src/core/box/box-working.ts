import type { Formula } from '../working.ts'
import type { Loudspeaker } from './loudspeaker.ts'
import { midBandGain } from './system-figures.ts'
import { portWorking, type TunedPort } from './tuned-port.ts'

const SMALL = 'R. H. Small, J. Audio Eng. Soc. 20 (1972) and 21 (1973), from memory'

/** The printed working of a loudspeaker at `voltageV` V RMS on the channel. */
export function boxWorking(speaker: Loudspeaker, port: TunedPort | null, voltageV: number): Formula[] {
  const { driver, circuit, air, group, acousticVolumeL } = speaker
  const rows: Formula[] = [
    {
      quantity: 'total Q of the driver, source resistance included',
      formula: '1 / (1 / (Qes * (Re + Rs) / Re) + 1 / Qms)',
      with: { Qes: driver.qes, Qms: driver.qms, Re: circuit.reOhm, Rs: circuit.sourceOhm },
      unit: '',
      source: SMALL,
    },
    {
      quantity: 'compliance ratio',
      formula: 'n * rho * c^2 * (Sd * 1e-4)^2 * Cms * 1e-3 / (Vab * 1e-3)',
      with: {
        n: group.count,
        rho: air.densityKgPerM3,
        c: air.speedMPerS,
        Sd: driver.sdCm2,
        Cms: driver.cmsMmPerN,
        Vab: acousticVolumeL,
      },
      unit: '',
      source: SMALL,
    },
    {
      quantity: 'level above the bass at 1 m',
      formula: '20 * log10(rho * n * Sd * 1e-4 * Bl * E / (omega * Mms * 1e-3 * (Re + Rs)) / 20e-6)',
      with: {
        rho: air.densityKgPerM3,
        n: group.count,
        Sd: driver.sdCm2,
        Bl: driver.blTm,
        E: voltageV * midBandGain(speaker),
        omega: circuit.solidAngle,
        Mms: driver.mmsG,
        Re: circuit.reOhm,
        Rs: circuit.sourceOhm,
      },
      unit: 'dB',
      source: SMALL,
    },
  ]
  if (speaker.opening === null)
    rows.push({
      quantity: 'resonance of the closed box',
      formula: 'fs * sqrt(1 + alpha)',
      with: { fs: driver.fsHz, alpha: speaker.alpha },
      unit: 'Hz',
      source: SMALL,
    })
  return port === null ? rows : [...rows, ...portWorking(port, acousticVolumeL, air)]
}
