import * as fields from './box-fields.ts'
import { boxOfKind } from './box-kind.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { type FormContext, moreOf, rows } from './form-parts.ts'
import { make } from './make.ts'

export function boxSection(context: FormContext): HTMLElement {
  const { draft } = context
  const kind = valueAt(draft, '/box/kind')
  const toKind = (chosen: Json | undefined) => context.change((now) => boxOfKind(now, chosen, context.past))
  return make(
    'section',
    { class: 'card', 'aria-labelledby': 'part-box' },
    make('h2', { id: 'part-box', tabindex: '-1' }, 'The box'),
    rows({ draft, set: (at, value) => (at === '/box/kind' ? toKind(value) : context.set(at, value)) }, [
      fields.boxCount,
      fields.boxKind,
    ]),
    make('div', { id: 'suited', class: 'offers' }),
    sizePart(context),
    kind === 'vented' ? tubePart(context) : undefined,
    kind === 'passive-radiator' ? rows(context, fields.radiator) : undefined,
    rows(context, fields.boxMake),
    moreOf('more-box', 'More about the box', rows(context, fields.boxMore)),
  )
}

/** The way the size is given in this design. */
export function sizeWayOf(draft: Draft): fields.SizeWay {
  if (valueAt(draft, '/box/outer') !== undefined) return 'outer'
  return valueAt(draft, '/box/inner') !== undefined ? 'inner' : 'netVolumeL'
}

function sizePart(context: FormContext): HTMLElement {
  const { draft, change } = context
  const way = sizeWayOf(draft)
  const ways: fields.SizeWay[] = ['outer', 'inner', 'netVolumeL']
  return make(
    'fieldset',
    {},
    make('legend', {}, 'Size'),
    ways.map((name) =>
      oneWay('size', name, fields.SIZES[name].label, name === way, () => change((now) => sizedBy(now, name))),
    ),
    rows(context, fields.SIZES[way].fields),
  )
}

/** The size given in another way: the measures move along, a volume gets the usual proportions. */
function sizedBy(draft: Draft, way: fields.SizeWay): Draft {
  const now = sizeWayOf(draft)
  if (now === way) return draft
  const sides = valueAt(draft, `/box/${now}`)
  const without = ['outer', 'inner', 'netVolumeL', 'proportions'].reduce(
    (left, name) => withValue(left, `/box/${name}`, undefined),
    draft,
  )
  if (way === 'netVolumeL') {
    const proportioned = withValue(without, '/box/proportions', { width: 1, height: 1.6, depth: 1.25 })
    return withValue(proportioned, '/box/netVolumeL', 3)
  }
  const measures =
    now === 'netVolumeL' || sides === undefined ? { widthMm: 130, heightMm: 210, depthMm: 160 } : sides
  return withValue(without, `/box/${way}`, measures)
}

function tubePart(context: FormContext): HTMLElement {
  const { draft, change } = context
  const byLength = valueAt(draft, '/port/lengthMm') !== undefined
  const swap = (from: string, to: string, start: number) =>
    change((now) => withValue(withValue(now, `/port/${from}`, undefined), `/port/${to}`, start))
  return make(
    'fieldset',
    {},
    make('legend', {}, 'The tube'),
    rows(context, fields.tube),
    oneWay('tube', 'tuning', 'I want a tuning', !byLength, () => swap('lengthMm', 'tuningHz', 80)),
    oneWay('tube', 'length', 'I have a length', byLength, () => swap('tuningHz', 'lengthMm', 60)),
    rows(context, [byLength ? fields.tubeLength : fields.tubeTuning]),
  )
}

function oneWay(
  group: string,
  name: string,
  label: string,
  checked: boolean,
  choose: () => void,
): HTMLElement {
  const id = `${group}-${name}`
  const input = make('input', { type: 'radio', name: group, id, checked, onchange: choose })
  return make('label', { class: 'way', for: id }, input, ' ', label)
}
