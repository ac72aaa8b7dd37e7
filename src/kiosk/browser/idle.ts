import { A_MINUTE_MS } from './idle-minutes.ts'
import { button, make } from './make.ts'

const WARNING_S = 30

/** How many idle times somebody may be away who reads a meter, and types what it says now and then. */
const WHILE_MEASURING = 3

/** Warns after the idle time and clears the page unless somebody says to stay; 0 minutes never. */
export function watchIdle(minutes: number, isEmpty: () => boolean, clear: () => void): void {
  if (minutes === 0) return
  let timer = 0
  let waited = 0
  const wait = () => {
    clearTimeout(timer)
    timer = setTimeout(over, minutes * A_MINUTE_MS)
  }
  const rest = () => {
    waited = 0
    wait()
  }
  const over = () => {
    waited += 1
    if (isEmpty()) rest()
    else if (isMeasuring() && waited < WHILE_MEASURING) wait()
    else warn(rest, clear)
  }
  for (const sign of ['pointerdown', 'keydown', 'input', 'wheel'])
    addEventListener(sign, rest, { passive: true })
  rest()
}

const isMeasuring = (): boolean => document.querySelector('dialog[open] #measure-title') !== null

function warn(stay: () => void, clear: () => void): void {
  let left = WARNING_S
  const seconds = make('b', {}, String(left))
  const box = make(
    'dialog',
    { class: 'notice', 'aria-labelledby': 'idle-title' },
    make('h2', { id: 'idle-title' }, 'Still there?'),
    make(
      'p',
      {},
      'The page is cleared for the next visitor in ',
      seconds,
      ' s. The design can be brought back, with what was measured.',
    ),
    button('I am still here', () => box.close(), 'primary'),
  )
  const ticking = setInterval(() => {
    left -= 1
    seconds.textContent = String(left)
    if (left > 0) return
    box.close()
    clear()
  }, 1000)
  box.addEventListener('close', () => {
    clearInterval(ticking)
    box.remove()
    stay()
  })
  document.body.append(box)
  box.showModal()
}
