import { type AnswerEvents, showAnswer, showAway, showFaults, showLate, showWorking } from './answer-panel.ts'
import { type Answer, designCheck, isAbort } from './ask.ts'
import type { Draft } from './draft.ts'
import { markFaults } from './fault-marks.ts'
import { showOffers } from './offers.ts'
import { askPictures, type Coming, drawPictures } from './pictures.ts'
import type { Wirer } from './wiring-list.ts'
import { showFirstWirings, toldOnce, wiringFaultsPlaced } from './wiring-offers.ts'

const SOON_MS = 200
/** After this an answer that does not come leaves nobody with the one before. */
const LATE_MS = 1500
const A_MOMENT_MS = 2000

/** What asking needs of the page. */
interface Page {
  form: HTMLElement
  /** Where pictures stand. */
  places: readonly HTMLElement[]
  /** The design on the page; undefined at the start. */
  draft: () => Draft | undefined
  events: (draft: Draft) => AnswerEvents
  wirer: (draft: Draft) => Wirer
}

/** Asks the service about the design on the page, and shows what it says; only the last question counts. */
export function asker({ form, places, draft: draftNow, events, wirer }: Page) {
  let asking = new AbortController()
  let again = 0

  function stop(): void {
    asking.abort()
    clearTimeout(again)
  }

  async function askFor(draft: Draft): Promise<void> {
    asking = new AbortController()
    const { signal } = asking
    const slow = setTimeout(() => showWorking(true), SOON_MS)
    const late = setTimeout(showLate, LATE_MS)
    try {
      // Asked in this order: the service has the answer when the pictures of it are wanted.
      const asked = designCheck(draft, signal)
      const coming = askPictures(places, draft, signal)
      const reply = await asked
      // Slow pictures are no late answer.
      clearTimeout(late)
      if ('away' in reply) {
        showAway(reply.away, reply.retryAfterS)
        again = setTimeout(ask, reply.retryAfterS * 1000)
        return
      }
      if ('faults' in reply) {
        const faults = toldOnce(reply.faults)
        showFirstWirings(faults, wirer(draft))
        const placed = wiringFaultsPlaced(faults, draft)
        return showFaults(markFaults(form, placed.faults, placed.draft), events(draft))
      }
      markFaults(form, [], draft)
      await answered(reply.answer, draft, coming, signal)
    } catch (error) {
      if (!isAbort(error)) throw error
    } finally {
      clearTimeout(slow)
      clearTimeout(late)
      if (!signal.aborted) showWorking(false)
    }
  }

  async function answered(answer: Answer, draft: Draft, coming: readonly Coming[], signal: AbortSignal) {
    showAnswer(answer, draft, events(draft))
    showOffers(form, answer, wirer(draft))
    const complete = await drawPictures(coming, signal)
    if (!complete && !signal.aborted) again = setTimeout(ask, A_MOMENT_MS)
    else if (!signal.aborted)
      document.body.dataset['drawn'] = String(Number(document.body.dataset['drawn'] ?? 0) + 1)
  }

  function ask(): void {
    const draft = draftNow()
    if (draft === undefined) return
    stop()
    void askFor(draft)
  }
  return { ask, stop }
}
