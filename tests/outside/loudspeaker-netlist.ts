/** A loudspeaker as plain figures, written down without any of our own code. All SI but where the name says. */
export interface NetlistCase {
  id: string
  driver: { fsHz: number; qms: number; qes: number; vasL: number; sdCm2: number; reOhm: number; leMh: number }
  count: number
  wiring: 'parallel' | 'series'
  sourceOhm: number
  netVolumeL: number
  /** Loss factors at the frequency of the tuning (vented) or `lossAtHz`. */
  lossAtHz: number
  leakageQ: number | null
  absorptionQ: number | null
  vent:
    | null
    | { kind: 'plug'; tuningHz: number; areaCm2: number; portQ: number | null }
    | { kind: 'radiator'; fsHz: number; qms: number; vasL: number; sdCm2: number; addedMassG: number }
    | { kind: 'pipe'; lengthMm: number; diameterMm: number; outerEndMm: number; innerEndMm: number }
}

export const C = 343.994
export const RHO = 1.19931

const n = (value: number): string => value.toExponential(12)

/** Motor and cone of driver `i` between electrical nodes `a` and `b`, pushing its flow into the acoustic node `box`. */
function driverLines({ driver }: NetlistCase, i: number, a: string, b: string): string[] {
  const w = 2 * Math.PI * driver.fsHz
  const sd = driver.sdCm2 * 1e-4
  const cms = (driver.vasL * 1e-3) / (RHO * C * C * sd * sd)
  const mms = 1 / (w * w * cms)
  const rms = (w * mms) / driver.qms
  const bl = Math.sqrt((w * mms * driver.reOhm) / driver.qes)
  return [
    `Vcoil${i} ${a} e${i}1 0`,
    `Re${i} e${i}1 e${i}2 ${n(driver.reOhm)}`,
    `Le${i} e${i}2 e${i}3 ${n(driver.leMh * 1e-3)}`,
    // back voltage Bl·u from the current of the mechanical loop, which is the velocity
    `Hback${i} e${i}3 ${b} Vcone${i} ${n(bl)}`,
    // mechanical loop: force Bl·i, then mass, loss, compliance and the box pressure times Sd
    `Hforce${i} m${i}1 0 Vcoil${i} ${n(bl)}`,
    `Vcone${i} m${i}1 m${i}2 0`,
    `Rms${i} m${i}2 m${i}3 ${n(rms)}`,
    `Lmms${i} m${i}3 m${i}4 ${n(mms)}`,
    `Cms${i} m${i}4 m${i}5 ${n(cms)}`,
    `Ebox${i} m${i}5 0 box 0 ${n(sd)}`,
    // cone flow Sd·u out of ground into the box
    `Fflow${i} 0 box Vcone${i} ${n(sd)}`,
  ]
}

function driversLines(given: NetlistCase): string[] {
  const lines: string[] = []
  for (let i = 0; i < given.count; i++) {
    const [a, b] =
      given.wiring === 'parallel'
        ? ['amp', '0']
        : [i === 0 ? 'amp' : `s${i}`, i === given.count - 1 ? '0' : `s${i + 1}`]
    lines.push(...driverLines(given, i, a, b))
  }
  return lines
}

function pipeLines(vent: {
  lengthMm: number
  diameterMm: number
  outerEndMm: number
  innerEndMm: number
}): string[] {
  const area = (Math.PI / 4) * (vent.diameterMm * 1e-3) ** 2
  const mass = (lengthMm: number) => (RHO * lengthMm * 1e-3) / area
  return [
    'Vvent box v1 0',
    `Linner v1 v2 ${n(mass(vent.innerEndMm))}`,
    `Tpipe v2 0 v3 0 Z0=${n((RHO * C) / area)} TD=${n((vent.lengthMm * 1e-3) / C)}`,
    `Louter v3 v4 ${n(mass(vent.outerEndMm))}`,
    'Vout v4 v5 0',
    // radiation resistance ρω²/(2πc): minus the second derivative of the flow, taken by two inductors of 1 H
    'F1 0 d1 Vout 1',
    'L1 d1 0 1',
    'G2 0 d2 d1 0 1',
    'L2 d2 0 1',
    `Erad v5 0 d2 0 ${n(-RHO / (2 * Math.PI * C))}`,
  ]
}

function ventLines(given: NetlistCase, cab: number): string[] {
  const { vent } = given
  if (vent === null) return []
  if (vent.kind === 'pipe') return pipeLines(vent)
  if (vent.kind === 'plug') {
    const w = 2 * Math.PI * vent.tuningHz
    const friction = vent.portQ === null ? 0 : 1 / (w * cab * vent.portQ)
    return [
      'Vvent box v1 0',
      `Lmap v1 v2 ${n(1 / (w * w * cab))}`,
      friction === 0 ? 'Vend v2 0 0' : `Rap v2 0 ${n(friction)}`,
    ]
  }
  const w = 2 * Math.PI * vent.fsHz
  const cap = (vent.vasL * 1e-3) / (RHO * C * C)
  const map = 1 / (w * w * cap)
  const added = (vent.addedMassG * 1e-3) / (vent.sdCm2 * 1e-4) ** 2
  return [
    'Vvent box v1 0',
    `Lmap v1 v2 ${n(map + added)}`,
    `Rap v2 v3 ${n((w * map) / vent.qms)}`,
    `Cap v3 0 ${n(cap)}`,
  ]
}

/** The elements of a loudspeaker: electrical, mechanical and acoustic side, coupled by controlled sources. */
export function netlistOf(given: NetlistCase): string[] {
  const cab = (given.netVolumeL * 1e-3) / (RHO * C * C)
  const w = 2 * Math.PI * given.lossAtHz
  const absorption = given.absorptionQ === null ? 0 : 1 / (w * cab * given.absorptionQ)
  return [
    'Vin in 0 DC 0 AC 1',
    given.sourceOhm === 0 ? 'Vlead in amp 0' : `Rlead in amp ${n(given.sourceOhm)}`,
    ...driversLines(given),
    // what is compressed in the box is what the listener hears
    'Vkept box k1 0',
    absorption === 0 ? 'Vlossless k1 k2 0' : `Rab k1 k2 ${n(absorption)}`,
    `Cab k2 0 ${n(cab)}`,
    ...(given.leakageQ === null ? [] : ['Vleak box l1 0', `Ral l1 0 ${n(given.leakageQ / (w * cab))}`]),
    ...ventLines(given, cab),
    // nodes with capacitors only need a path for the operating point
    'Rgmin box 0 1e15',
    ...Array.from({ length: given.count }, (_, i) => [
      `Rg${i}a m${i}4 0 1e12`,
      `Rg${i}b m${i}5 0 1e12`,
    ]).flat(),
  ]
}
