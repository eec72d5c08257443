/**
 * "Next finding" goes from one to the next, worst first, says which, and comes round to the first again. The
 * focus goes to the way on inside the finding, so that one key walks through all of them.
 */
export function walkFindings(): void {
  const next = document.getElementById('next-finding')
  const says = document.getElementById('walk-at')
  const all = [...document.querySelectorAll<HTMLElement>('.find')].sort((a, b) => numberOf(a) - numberOf(b))
  if (next === null || says === null || all.length === 0) return
  let at = -1
  const go = (event: Event, to: number) => {
    event.preventDefault()
    at = to % all.length
    const found = all[at]!
    for (const other of all) other.classList.toggle('at', other === found)
    says.textContent = `${at + 1} of ${all.length}`
    found.scrollIntoView({ block: 'center' })
    const on = found.querySelector<HTMLElement>('.on a') ?? found
    on.focus({ preventScroll: true })
  }
  next.addEventListener('click', event => go(event, at + 1))
  all.forEach((found, i) => {
    found.querySelector('.on a')?.addEventListener('click', event => go(event, i + 1))
  })
}

function numberOf(element: HTMLElement): number {
  return Number(element.id.replace('finding-', ''))
}
