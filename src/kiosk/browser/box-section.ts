import * as fields from './box-fields.ts'
import { boxOfKind } from './box-kind.ts'
import { type SizeWay, sizedBy, sizeWayOf, type TubeWay, tubeBy, tubeWayOf } from './box-way.ts'
import { type Json, valueAt } from './draft.ts'
import { type FormContext, moreOf, rows } from './form-parts.ts'
import { make } from './make.ts'
import { tell } from './notice.ts'

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

function sizePart(context: FormContext): HTMLElement {
  const { draft, change, past } = context
  const way = sizeWayOf(draft, past)
  const ways: SizeWay[] = ['outer', 'inner', 'netVolumeL']
  return make(
    'fieldset',
    {},
    make('legend', {}, 'Size'),
    ways.map((name) =>
      oneWay('size', name, fields.SIZES[name].label, name === way, () => {
        const sized = sizedBy(context.draft, name, context.past)
        change((now) => sized ?? now)
        if (sized === undefined) tell(NOT_TURNED)
      }),
    ),
    rows(context, fields.SIZES[way].fields),
  )
}

const NOT_TURNED =
  'These measures cannot be turned into others: give all of them and the thickness of the board, as numbers with mm, cm, in or L, or empty them first.'

function tubePart(context: FormContext): HTMLElement {
  const { draft, change, past } = context
  const byLength = tubeWayOf(draft, past) === 'lengthMm'
  const swap = (way: TubeWay) => change((now) => tubeBy(now, way, context.past))
  return make(
    'fieldset',
    {},
    make('legend', {}, 'The tube'),
    rows(context, fields.tube),
    oneWay('tube', 'tuning', 'I want a tuning', !byLength, () => swap('tuningHz')),
    oneWay('tube', 'length', 'I have a length', byLength, () => swap('lengthMm')),
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
