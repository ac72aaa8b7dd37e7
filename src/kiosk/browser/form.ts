import { boardsSection } from './boards-section.ts'
import { boxSection } from './box-section.ts'
import { sizeWayOf, tubeWayOf } from './box-way.ts'
import { type Draft, type Json, valueAt } from './draft.ts'
import { driversSection } from './drivers-section.ts'
import { type FormContext, section } from './form-parts.ts'
import * as power from './power-fields.ts'
import { hopes } from './shop-fields.ts'

/** The whole form for a design; built anew when the design changes its shape, not while a value is typed. */
export function formOf(context: FormContext): HTMLElement[] {
  return [
    driversSection(context),
    boxSection(context),
    section('Amplifier board', context, power.amplifier, power.amplifierMore),
    supplySection(context),
    section('Music player', context, [], power.sound, 'Signal and volume control'),
    boardsSection(context),
    section('What you hope for', context, hopes),
  ]
}

/** What decides which inputs there are; the form is built anew when this text changes. */
export function shapeOf(draft: Draft, past: readonly Draft[]): string {
  const at = (pointer: string): Json | undefined => valueAt(draft, pointer)
  const lengthOf = (list: Json | undefined) => (Array.isArray(list) ? list.length : 0)
  return JSON.stringify([
    lengthOf(at('/drivers')),
    lengthOf(at('/stock')),
    at('/box/kind') ?? '',
    at('/supply/kind') ?? '',
    [sizeWayOf(draft, past), tubeWayOf(draft, past)],
  ])
}

const SOCKETS = ['computer-port', 'charger', 'power-bank']

function supplySection(context: FormContext): HTMLElement {
  const kind = String(valueAt(context.draft, '/supply/kind') ?? '')
  return section(
    'What it plugs into',
    context,
    [
      power.supplyKind,
      ...(SOCKETS.includes(kind) ? [power.usbSocket] : []),
      ...(kind === 'cells' ? power.pack : []),
      ...power.source,
      ...(kind === 'cells' || kind === 'power-bank' ? power.battery : []),
      ...(kind === 'power-bank' ? power.bank : []),
    ],
    power.lead,
    'Supply lead and capacitor',
  )
}
