import type { Amplifier, Signal, Supply } from '../../schema/power.ts'
import type { Wiring } from '../../schema/wiring.ts'
import type { Drivers } from './network.ts'

/** What feeds the amplifier, and what was worked out for it. */
export interface Feed
  extends Pick<Supply, 'kind' | 'cellsInSeries' | 'cable' | 'reservoirUf' | 'inrushLimiterOhm'> {
  voltageV: number
  fuseA: number
  /** Rating of the switch; null for none. */
  switchA: number | null
  /** Resistor of the indicator; null for none. */
  indicatorOhm: number | null
  /** Resistor that keeps a power bank awake; null for none. */
  keepAliveOhm: number | null
  /** Least voltage marked on the reservoir; null for none. */
  reservoirRatingV: number | null
}

/** All that the wiring diagram shows. */
export interface Circuit {
  name?: string | undefined
  drivers: readonly Drivers[]
  /** One channel. */
  wiring: Wiring
  boxes: number
  channelsPerBox: number
  amplifier: Pick<Amplifier, 'output' | 'minimumLoadOhm' | 'gainDb'>
  /** Capacitor to fit before each load; null where none is needed. */
  outputCapacitorUf: number | null
  /** null where nothing is known of it. */
  feed: Feed | null
  signal: Pick<Signal, 'volumeControl' | 'inputCapacitorUf'>
}

export const channelsOf = ({ boxes, channelsPerBox }: Circuit): number => boxes * channelsPerBox
