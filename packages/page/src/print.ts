/** On paper nothing of these is folded: safety lines are open while the page prints. */
export function openForPrint(which = 'details'): void {
  const folded = new Set<HTMLDetailsElement>()
  addEventListener('beforeprint', () => {
    for (const d of document.querySelectorAll<HTMLDetailsElement>(which)) {
      if (d.open) continue
      d.open = true
      folded.add(d)
    }
  })
  addEventListener('afterprint', () => {
    for (const d of folded) d.open = false
    folded.clear()
  })
}
