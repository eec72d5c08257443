import { Figure } from '../look/field.tsx'
import { w } from '../text/words.ts'
import type { LayerView } from '../worker/views.ts'

/** The hottest a pour gets, with its band. */
export function Peak({ peak }: { readonly peak: LayerView['peak'] }) {
  if (peak.kind === 'none') return <span class="q">{w.card.notPredicted}</span>
  if (peak.kind === 'runaway') return <b class="st">{w.card.runaway}</b>
  return (
    <>
      <Figure value={peak.c} dimension="temperature" digits={0} />{' '}
      <span class="band-of">
        <Figure value={peak.lowC} dimension="temperature" digits={0} bare />–
        {peak.highC === null ? (
          w.card.runaway
        ) : (
          <Figure value={peak.highC} dimension="temperature" digits={0} bare />
        )}
      </span>
    </>
  )
}
