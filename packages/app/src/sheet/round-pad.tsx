import { useSignalEffect } from '@preact/signals'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { SectionPath } from '../../../engine/src/sheets/section-cut.ts'
import type { RoundView } from '../round/main.ts'
import { deskFacts } from '../state/desk-ask.ts'
import { engineAnswer } from '../state/engine.ts'
import { isDim } from '../state/preferences.ts'
import { face } from '../state/screen.ts'
import { w } from '../text/words.ts'
import type { PlannedView } from '../worker/views.ts'

/**
 * The piece in the round, in the place of the plan. What draws it is loaded when it is first wanted; bodies are made
 * anew for every plan. A cut is first offered where the section runs.
 */
export function RoundPad({ view, path }: { readonly view: PlannedView; readonly path: SectionPath }) {
  const host = useRef<HTMLDivElement>(null)
  const shown = useRef<RoundView | null>(null)
  const [says, setSays] = useState<string>(w.sheet.roundWaits)
  useEffect(() => {
    let gone = false
    const facts = deskFacts()
    if (facts === null) return
    const asked = engineAnswer({ kind: 'round', ...facts, asOf: new Date().toISOString() })
    Promise.all([asked, import('../round/main.ts')])
      .then(([answer, { mountRound }]) => {
        if (gone || host.current === null) return
        if (answer.kind !== 'round') {
          // What is wrong with the document is said where documents are checked; the last good bodies stay.
          setSays(answer.kind === 'failed' ? w.sheet.roundFails(answer.says) : '')
          return
        }
        setSays('')
        const { axis, place } = lineOf(path)
        if (shown.current !== null) shown.current.update(answer.model)
        else
          shown.current = mountRound(host.current, answer.model, {
            dim: isDim(),
            face: face.value,
            cutAt: { [axis]: place },
            faceElsewhere: true
          })
      })
      .catch((e: unknown) => {
        if (!gone) setSays(w.sheet.roundFails(e instanceof Error ? e.message : String(e)))
      })
    return () => {
      gone = true
    }
  }, [view])
  useEffect(
    () => () => {
      shown.current?.dispose()
      shown.current = null
    },
    []
  )
  // Read first: an effect follows only what it has read, and at first there is no view to hand it to.
  useSignalEffect(() => {
    const dim = isDim()
    shown.current?.theme(dim)
  })
  useSignalEffect(() => {
    const turned = face.value
    shown.current?.face(turned)
  })
  return (
    <div>
      <div ref={host} />
      {says === '' ? null : (
        <p class="f" role="status">
          {says}
        </p>
      )}
    </div>
  )
}

function lineOf(path: SectionPath): { axis: 'x' | 'y'; place: number } {
  return { axis: path.along, place: path.legs[0]!.at }
}
