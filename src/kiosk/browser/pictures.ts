import { askFor, isAbort } from './ask.ts'
import type { Draft } from './draft.ts'
import { button, make } from './make.ts'

interface Picture {
  name: string
  title: string
  /** Width over height, so that nothing jumps when it comes. */
  shape: string
}

const FIRST: readonly Picture[] = [
  { name: 'response', title: 'How loud it plays each note', shape: 'chart' },
  { name: 'excursion', title: 'How far the cone moves at full volume', shape: 'chart' },
  { name: 'box', title: 'The box', shape: 'drawing' },
  { name: 'cutting', title: 'Where to saw', shape: 'drawing' },
]

const MORE: readonly Picture[] = [
  { name: 'wiring', title: 'How to wire it', shape: 'drawing' },
  { name: 'impedance', title: 'What the amplifier sees', shape: 'chart' },
  { name: 'power-flow', title: 'Where the power goes', shape: 'chart' },
  { name: 'air-speed', title: 'Air in the tube', shape: 'chart' },
  { name: 'panels', title: 'Panels with their holes', shape: 'drawing' },
]

/** The places of the pictures; empty until the first answer. */
export function pictureFrames(redraw: () => void): { first: HTMLElement; more: HTMLDetailsElement } {
  const frames = (pictures: readonly Picture[]) =>
    make(
      'div',
      { class: 'pictures' },
      pictures.map(({ name, title, shape }) =>
        make(
          'figure',
          { class: shape, 'data-picture': name },
          make('img', { alt: '', hidden: true }),
          make('p', { class: 'nothing' }, 'Nothing to draw yet.'),
          make(
            'figcaption',
            {},
            title,
            button('Larger', () => enlarge(name), 'larger', `Larger: ${title}`),
          ),
        ),
      ),
    )
  const more = make('details', { id: 'more-pictures' }, make('summary', {}, 'More pictures'), frames(MORE))
  more.addEventListener('toggle', redraw)
  return { first: frames(FIRST), more }
}

/** One picture over the whole screen. */
function enlarge(name: string): void {
  const image = document.querySelector<HTMLImageElement>(`[data-picture="${name}"] img`)
  if (image === null) return
  const close = button('Close', () => box.close(), 'primary')
  const box = make(
    'dialog',
    { class: 'picture', 'aria-label': 'Picture' },
    close,
    make('img', { src: image.src, alt: image.alt }),
  )
  box.addEventListener('close', () => box.remove())
  document.body.append(box)
  box.showModal()
}

/** A picture that comes later than this after its answer is marked as old until then. */
const LATE_MS = 300

/** A picture on its way, and the place that it is for. */
export interface Coming {
  figure: HTMLElement
  picture: ReturnType<typeof askFor>
}

const isOnShow = (place: HTMLElement): boolean => !(place instanceof HTMLDetailsElement) || place.open

/** Takes out the pictures of a design that is no longer on the page. */
export function emptyPictures(places: readonly HTMLElement[]): void {
  for (const figure of places.flatMap((place) => [
    ...place.querySelectorAll<HTMLElement>('[data-picture]'),
  ])) {
    const image = figure.querySelector('img')
    if (image === null) continue
    if (image.src !== '') URL.revokeObjectURL(image.src)
    image.removeAttribute('src')
    nothing(figure, image)
  }
}

/** Asks for every picture that is on show, while the answer itself is still on its way; the others are old from now on. */
export function askPictures(places: readonly HTMLElement[], draft: Draft, signal: AbortSignal): Coming[] {
  for (const place of places)
    if (!isOnShow(place)) for (const image of place.querySelectorAll('img')) image.classList.add('stale')
  return places
    .filter(isOnShow)
    .flatMap((place) => [...place.querySelectorAll<HTMLElement>('[data-picture]')])
    .map((figure) => {
      const name = figure.dataset['picture'] ?? ''
      const picture = askFor(`/v1/design-check?format=svg&picture=${name}`, draft, signal)
      // Where the answer is a fault nobody looks at its pictures.
      picture.catch(() => undefined)
      return { figure, picture }
    })
}

/** Draws the pictures that were asked for; true when every one could be had. */
export async function drawPictures(coming: readonly Coming[], signal: AbortSignal): Promise<boolean> {
  const drawn = await Promise.all(coming.map((one) => drawOne(one, signal)))
  return drawn.every((one) => one)
}

/** Whether the picture could be asked for; until then the one before stays, marked as old. */
async function drawOne({ figure, picture: asked }: Coming, signal: AbortSignal): Promise<boolean> {
  const image = figure.querySelector('img')
  if (image === null) return true
  const late = setTimeout(() => image.classList.add('stale'), LATE_MS)
  try {
    const picture = await asked
    if (!signal.aborted) image.classList.toggle('stale', picture === 'away')
    if (picture === 'away') return false
    if (picture === 'none') {
      nothing(figure, image)
      return true
    }
    const said = saidOf(await picture.text())
    if (!signal.aborted) await put(figure, image, picture, said)
  } catch (error) {
    if (!isAbort(error)) throw error
  } finally {
    clearTimeout(late)
  }
  return true
}

/** Title and description of a picture, as it brings them for people who do not see it. Its style must not be parsed here. */
function saidOf(svg: string): string {
  const texts = ['title', 'desc'].map(
    (name) => new RegExp(`<${name}[^>]*>([^<]*)</${name}>`).exec(svg)?.[1] ?? '',
  )
  return new DOMParser().parseFromString(texts.join('. '), 'text/html').body.textContent
}

async function put(figure: HTMLElement, image: HTMLImageElement, picture: Blob, said: string): Promise<void> {
  const before = image.src
  image.src = URL.createObjectURL(picture)
  image.alt = said
  image.hidden = false
  figure.classList.add('drawn')
  if (before !== '') URL.revokeObjectURL(before)
  await image.decode().catch(() => undefined)
}

function nothing(figure: HTMLElement, image: HTMLImageElement): void {
  image.hidden = true
  image.alt = ''
  figure.classList.remove('drawn')
}
