import { effect, signal } from '@preact/signals'

import type { ShownUnits } from '../../../engine/src/quantity/shown-units.ts'
import { METRIC } from '../../../engine/src/quantity/shown-units.ts'

const KEY = 'castwright'
interface Kept {
  theme?: 'light' | 'dim'
  units?: ShownUnits
}

// Storage may be shut off: then nothing is remembered, and nothing breaks.
function read(): Kept {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? '{}') as Kept
  } catch {
    return {}
  }
}

const kept = read()
const system = matchMedia('(prefers-color-scheme: dark)')

/** The units shown. Documents keep theirs. */
export const units = signal<ShownUnits>({ ...METRIC, ...kept.units })
/** null: as the system has it. */
export const theme = signal<'light' | 'dim' | null>(kept.theme ?? null)
const systemDim = signal(system.matches)
system.addEventListener('change', () => {
  systemDim.value = system.matches
})

/** Whether the screen is dim now. */
export function isDim(): boolean {
  return theme.value === null ? systemDim.value : theme.value === 'dim'
}

/** Shows and remembers what was chosen. */
export function applyPreferences(): void {
  effect(() => {
    const root = document.documentElement
    if (theme.value === null) delete root.dataset['theme']
    else root.dataset['theme'] = theme.value
    try {
      localStorage.setItem(
        KEY,
        JSON.stringify({ units: units.value, ...(theme.value === null ? {} : { theme: theme.value }) })
      )
    } catch {
      return
    }
  })
}
