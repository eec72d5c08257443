import { effect, signal } from '@preact/signals'

import type { LengthUnit, TemperatureUnit } from '../../../engine/src/draw/units.ts'

/** The units shown. Documents keep theirs. */
export interface Units {
  readonly length: LengthUnit
  readonly temperature: TemperatureUnit
  readonly mass: 'g' | 'oz'
}

const KEY = 'castwright'
interface Kept {
  theme?: 'light' | 'dim'
  units?: Units
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

export const units = signal<Units>({ length: 'mm', temperature: '°C', mass: 'g', ...kept.units })
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
