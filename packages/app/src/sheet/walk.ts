import { signal } from '@preact/signals'
import { view } from '../state/desk.ts'

/** Number of the finding the walk is at; null before it began. */
export const walkAt = signal<number | null>(null)

/** Goes to the next finding, worst first, and comes round to the first again. */
export function nextFinding(): void {
  const n = view.value?.findings.length ?? 0
  if (n === 0) return
  goToFinding(((walkAt.value ?? 0) % n) + 1)
}

function goToFinding(number: number): void {
  walkAt.value = number
  requestAnimationFrame(() => {
    const found = document.getElementById(`finding-${number}`)
    found?.scrollIntoView({ block: 'center' })
    found?.focus({ preventScroll: true })
  })
}
