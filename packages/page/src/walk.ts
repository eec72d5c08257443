/** "Next finding" goes from one to the next, worst first, says which, and comes round to the first again. */
export function walkFindings(): void {
  const next = document.getElementById('next-finding')
  const says = document.getElementById('walk-at')
  const all = [...document.querySelectorAll<HTMLElement>('.find')].sort((a, b) => numberOf(a) - numberOf(b))
  if (next === null || says === null || all.length === 0) return
  let at = -1
  next.addEventListener('click', event => {
    event.preventDefault()
    at = (at + 1) % all.length
    const found = all[at]!
    for (const other of all) other.classList.toggle('at', other === found)
    says.textContent = `${at + 1} of ${all.length}`
    found.scrollIntoView({ block: 'center' })
    found.focus({ preventScroll: true })
  })
}

function numberOf(element: HTMLElement): number {
  return Number(element.id.replace('finding-', ''))
}
