/** On a narrow screen parts and answer lie below one another; one button leads to the one that is not on show, and back. */
export function wayBetween(way: HTMLButtonElement, parts: HTMLElement, answer: HTMLElement): void {
  let leftAt = 0
  let answerShows = false
  new IntersectionObserver(
    ([seen]) => {
      answerShows = seen?.isIntersecting === true
      way.textContent = answerShows ? 'Back to parts' : 'Show answer'
    },
    // Shown is what reaches above the middle of the screen.
    { rootMargin: '0px 0px -50% 0px' },
  ).observe(answer)
  way.addEventListener('click', () => {
    if (answerShows) {
      const within = leftAt < answer.offsetTop
      scrollTo(0, within ? leftAt : parts.offsetTop)
      return
    }
    leftAt = scrollY
    answer.scrollIntoView()
  })
}
