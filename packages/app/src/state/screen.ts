import { signal } from '@preact/signals'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'

/** The face of the plan that is shown. */
export const face = signal<PageView['face']>('front')

/** The same width at which the style sheet turns to its small layout. */
const small = matchMedia('(max-width: 62rem)')
/** The drawing there is room for. */
export const width = signal<PageView['id']>(small.matches ? 'narrow' : 'wide')
small.addEventListener('change', () => {
  width.value = small.matches ? 'narrow' : 'wide'
})
