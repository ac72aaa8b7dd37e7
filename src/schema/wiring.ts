import { Type } from 'typebox'
import { share } from './shared.ts'

/** One channel as a tree: a driver id, a component, or parts in series or in parallel. */
export type Wiring =
  | string
  | { series: Wiring[] }
  | { parallel: Wiring[] }
  | { resistorOhm: number }
  | { inductorMh: number; resistanceOhm?: number }
  | { capacitorUf: number }

const branches = { type: 'array', minItems: 1, maxItems: 32, items: { $ref: 'Wiring#' } }

const object = (properties: Record<string, unknown>, required: string[]) => ({
  type: 'object',
  properties,
  required,
  additionalProperties: false,
})

export const Wiring = share(
  'Wiring',
  Type.Unsafe<Wiring>({
    description:
      'One channel as a tree: a driver id, {"series": […]}, {"parallel": […]}, {"resistorOhm": …}, {"inductorMh": …, "resistanceOhm": …} or {"capacitorUf": …}. Every time an id stands in it, one more driver of that kind is connected.',
    examples: [{ series: ['main', 'main'] }],
    anyOf: [
      { type: 'string', minLength: 1, maxLength: 60 },
      object({ series: branches }, ['series']),
      object({ parallel: branches }, ['parallel']),
      object(
        {
          resistorOhm: {
            type: 'number',
            minimum: 0.001,
            maximum: 1e6,
            'x-unit': 'ohm',
            description: 'Resistor',
          },
        },
        ['resistorOhm'],
      ),
      object(
        {
          inductorMh: { type: 'number', minimum: 0.0001, maximum: 1000, 'x-unit': 'mH', description: 'Coil' },
          resistanceOhm: {
            type: 'number',
            minimum: 0,
            maximum: 1000,
            'x-unit': 'ohm',
            description: 'Resistance of the coil',
          },
        },
        ['inductorMh'],
      ),
      object(
        {
          capacitorUf: {
            type: 'number',
            minimum: 0.0001,
            maximum: 1e6,
            'x-unit': 'uF',
            description: 'Capacitor',
          },
        },
        ['capacitorUf'],
      ),
    ],
  }),
)
