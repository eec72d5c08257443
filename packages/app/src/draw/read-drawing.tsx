import { useState } from 'preact/hooks'
import { parseQuantity } from '../../../engine/src/quantity/parse.ts'
import { addPatch, newName, timberLike } from '../card/new-entry.ts'
import { Figure } from '../look/field.tsx'
import { PickFile } from '../look/pick-file.tsx'
import { addFile, edit, piece } from '../state/desk.ts'
import { engineAnswer } from '../state/engine.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import type { DrawingPart } from '../worker/views.ts'
import { toolSays } from './tools.ts'

const MOST_BYTES = 4_000_000
/** What a name of an entry may not hold. */
const NOT_IN_NAMES = /[^A-Za-z0-9À-ɏ _.-]/g

/** Reads an SVG: its closed shapes by name, each laid as a timber or as the outline of the piece. */
export function ReadDrawing() {
  const [read, setRead] = useState<{ name: string; text: string; parts: readonly DrawingPart[] } | null>(null)
  const open = async (picked: string, text: string) => {
    const name = `${
      picked
        .replace(/\.svg$/i, '')
        .replace(/[^\p{L}\p{N} _-]/gu, '-')
        .slice(0, 60) || 'drawing'
    }.svg`
    const answer = await engineAnswer({ kind: 'drawing', name, text })
    if (answer.kind === 'drawing') setRead({ name, text, parts: answer.parts })
    else if (answer.kind === 'refused') throw new Error(answer.problems[0]?.found ?? '')
    else if (answer.kind === 'failed') throw new Error(answer.says)
  }
  const lay = async (part: DrawingPart, how: 'timber' | 'outline') => {
    const at = piece.value
    if (at === null || read === null) return
    await addFile(read.name, read.text)
    const document = piece.value!.document
    const shape: Json = { file: read.name, ...(part.id === '' ? {} : { part: part.id }), at: placeOf(part) }
    if (how === 'outline') edit(w.draw.laid(read.name), [{ op: 'replace', path: '/outline', value: shape }])
    else {
      const id = newName(document, (part.id || 'board').replace(NOT_IN_NAMES, '-'))
      edit(
        w.draw.laid(read.name),
        addPatch(document, 'timbers', { id, ...timberLike(document), outline: shape })
      )
    }
    setRead(null)
  }
  return (
    <>
      <PickFile
        words={w.draw.read}
        accept=".svg,image/svg+xml"
        mostBytes={MOST_BYTES}
        onProblem={says => {
          toolSays.value = says
        }}
        onText={open}
      />
      {read === null ? null : (
        <div class="sheet-let drawing-parts" role="dialog" aria-label={w.draw.read2(read.name)}>
          <b>{w.draw.read2(read.name)}</b>
          <ul class="plain">
            {read.parts.map(part => (
              <li key={part.id} class="r">
                <svg
                  viewBox={`${-0.04 * part.widthMm} ${-0.04 * part.heightMm} ${1.08 * part.widthMm} ${1.08 * part.heightMm}`}
                  aria-hidden="true"
                >
                  <path d={part.path} fill-rule="evenodd" />
                </svg>
                <span>
                  {part.id === '' ? w.draw.all : part.id}{' '}
                  <span class="q">
                    <Figure value={part.widthMm} dimension="length" digits={0} bare /> ×{' '}
                    <Figure value={part.heightMm} dimension="length" digits={0} />
                  </span>
                </span>
                <span class="ways">
                  <button type="button" class="link" onClick={() => void lay(part, 'timber')}>
                    {w.draw.asTimber}
                  </button>
                  <button type="button" class="link" onClick={() => void lay(part, 'outline')}>
                    {w.draw.asOutline}
                  </button>
                </span>
              </li>
            ))}
          </ul>
          <button type="button" class="link" onClick={() => setRead(null)}>
            {w.card.close}
          </button>
        </div>
      )}
    </>
  )
}

// A drawing's upper left corner is its origin, y down: its middle is laid on the middle of the plan.
function placeOf(part: DrawingPart): [number, number] {
  const outline = piece.value?.document['outline'] as Json | undefined
  const [x, y] = ((outline?.['at'] as [number | string, number | string] | undefined) ?? [0, 0]).map(v =>
    typeof v === 'number' ? v : (parseQuantity(v, 'length')?.value ?? 0)
  ) as [number, number]
  return [
    Math.round((x - part.widthMm / 2 - part.fromLeftMm) * 10) / 10,
    Math.round((y + part.heightMm / 2 + part.fromTopMm) * 10) / 10
  ]
}
