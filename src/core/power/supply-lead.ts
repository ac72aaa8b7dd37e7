import type { Assumption } from '../../schema/frame.ts'
import type { Supply } from '../../schema/power.ts'
import { loopResistanceOhm, USUAL_CONTACT_OHM, USUAL_CONTACTS, USUAL_GAUGE_AWG } from './cable.ts'

/** A usual supply lead with its plugs, ohm the loop: two bench reports read 0.25 to 0.5 ohm, seen. */
const USUAL_LEAD_OHM = 0.25

/** Resistance of the supply lead, ohm the loop, and what was assumed of it. */
export function supplyLead({ cable }: Supply): { cableOhm: number; assumptions: Assumption[] } {
  if (cable === undefined)
    return {
      cableOhm: USUAL_LEAD_OHM,
      assumptions: [
        {
          at: '/supply/cable',
          value: USUAL_LEAD_OHM,
          unit: 'ohm',
          why: 'a usual lead with its plugs, out and back',
        },
      ],
    }
  const rows: (Assumption & { given: boolean })[] = [
    {
      at: '/supply/cable/gaugeAwg',
      value: USUAL_GAUGE_AWG,
      unit: 'AWG',
      why: 'usual for the supply wires of a better lead',
      given: cable.gaugeAwg !== undefined || cable.areaMm2 !== undefined,
    },
    {
      at: '/supply/cable/contacts',
      value: USUAL_CONTACTS,
      unit: '',
      why: 'a plug of two contacts at each end',
      given: cable.contacts !== undefined,
    },
    {
      at: '/supply/cable/contactResistanceOhm',
      value: USUAL_CONTACT_OHM,
      unit: 'ohm',
      why: 'a contact through its life, as connector data have it',
      given: cable.contactResistanceOhm !== undefined,
    },
  ]
  return {
    cableOhm: loopResistanceOhm(cable),
    assumptions: rows.filter(({ given }) => !given).map(({ given: _, ...assumption }) => assumption),
  }
}
