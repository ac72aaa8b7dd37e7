/** What the rules about a port look at. */
export interface PortFacts {
  /** Pointer to the port in the request, empty when its fields stand at the top level. */
  at: string
  /** Which of tuning and length the request gives. */
  given: 'tuningHz' | 'lengthMm'
  /** Tuning of this port at another length, Hz, on the air that the tube then leaves; null when none is left. */
  tuningOf: (lengthMm: number) => number | null
  hasBends: boolean
  tuningHz: number
  lengthMm: number | null
  highestTuningHz: number
  pipeResonanceHz: number | null
  panelThicknessMm: number | null
  insideDepthMm: number | null
  diameterMm: number
  /** How far it reaches from the front towards the back, and what is left of it beside its bends, mm. */
  reachMm: number
  straightMm: number
  netVolumeL: number
  /** Air inside all tubes together, litres; 0 without a length. */
  tubeAirL: number
}
