import type { Work } from './work.ts'

/** What a pour's resin is known by, and how sure its speed is: for the basis of what follows from its cure. */
export function knownBy(work: Work, i: number): string {
  const { known, record } = work.materials.resins[i]!
  const from =
    known === 'cup' ? 'its cup test' : known === 'label' ? 'its label over its class' : 'generic class'
  return `${from}, rate ±${Math.round(100 * record.band.time)} %`
}
