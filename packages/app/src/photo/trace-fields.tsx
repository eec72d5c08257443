import { useMemo } from 'preact/hooks'
import type { Homography } from '../../../engine/src/draw/perspective.ts'
import { Choice } from '../look/choice.tsx'
import { Figure } from '../look/field.tsx'
import { canUndo, chosen, edit, piece, problems, undo } from '../state/desk.ts'
import { follow } from '../state/route.ts'
import { w } from '../text/words.ts'
import type { Json } from '../worker/document.ts'
import { layPhoto, photoSays } from './desk-photo.ts'
import { PlaceFields } from './lay-fields.tsx'
import type { Laid } from './laying.ts'
import { errorAt } from './laying.ts'
import type { Catch } from './trace-hand.ts'
import { removePoint } from './trace-hand.ts'
import type { Mode } from './trace-pad.tsx'
import { outlinePatch, timberPatch, tracedRing } from './trace-ring.ts'

/** Px of the photo within which an edge may be caught. */
const WITHIN_PX = [6, 12, 24, 48] as const
/** Places of the trace at which the error is reckoned: it changes slowly along the line. */
const MOST_LOOKED = 24

const MODES = ['points', 'stroke', 'photo', 'view'] as const satisfies readonly Mode[]

/** Beside the photo laid flat: what a press does, what was traced, and what it is made. */
export function TraceFields(p: {
  readonly id: string
  readonly laid: Laid
  readonly map: Homography
  readonly mode: Mode
  readonly onMode: (mode: Mode) => void
  readonly within: Catch
  readonly onWithin: (within: Catch) => void
  readonly made: 'timber' | 'outline' | null
  readonly onMade: (made: 'timber' | 'outline') => void
}) {
  const { laid, map } = p
  const ring = useMemo(() => tracedRing(laid.trace, map), [laid.trace, map])
  const error = useMemo(() => worstError(laid), [laid])
  const ready = Array.isArray(ring)
  const make = (what: 'timber' | 'outline') => {
    const document = piece.value?.document
    if (document === undefined || !ready) return
    const timbers = ((document['timbers'] ?? []) as Json[]).length
    if (what === 'timber') {
      edit(w.photo.madeTimber, timberPatch(document, ring, w.photo.word))
      chosen.value = `/timbers/${timbers}`
    } else edit(w.photo.madeOutline, outlinePatch(document, ring))
    photoSays.value = ''
    p.onMade(what)
  }
  const size = ready ? extent(ring) : null
  return (
    <>
      <div class="cap">
        <h2>{w.photo.hand}</h2>
        <Choice<Mode>
          words={w.photo.hand}
          options={MODES.map(m => [m, w.photo.modes[m]] as const)}
          value={p.mode}
          onPick={p.onMode}
        />
      </div>
      <p class="next">{w.photo.modeSays[p.mode]}</p>
      <p class="catch">
        <label class="check">
          <input
            type="checkbox"
            checked={p.within !== null}
            onChange={e => p.onWithin(e.currentTarget.checked ? WITHIN_PX[1] : null)}
          />
          {w.photo.snap}
        </label>
        {p.within === null ? null : (
          <label>
            {w.photo.within}{' '}
            <select
              aria-label={`${w.photo.snap}, ${w.photo.within}, ${w.photo.px}`}
              value={String(p.within)}
              onChange={e => p.onWithin(Number(e.currentTarget.value))}
            >
              {WITHIN_PX.map(px => (
                <option key={px} value={px}>
                  {px}
                </option>
              ))}
            </select>{' '}
            <u>{w.photo.px}</u>
          </label>
        )}
      </p>
      <PlaceFields laid={laid} />
      <div class="cap">
        <h2>{w.photo.size}</h2>
        <span class="f">{w.photo.count(laid.trace.length)}</span>
      </div>
      {size === null ? (
        <p class="f">{laid.trace.length < 3 || ready ? w.photo.atLeast : w.photo.cannot(ring.problem)}</p>
      ) : (
        <p>
          <Figure value={size[0]} dimension="length" digits={1} bare /> ×{' '}
          <Figure value={size[1]} dimension="length" digits={1} />{' '}
          {Number.isFinite(error) ? (
            <span class="f">{w.photo.errorWorst(error.toFixed(error < 1 ? 2 : 1))}</span>
          ) : null}
        </p>
      )}
      <p class="ways">
        <button
          type="button"
          class="link"
          disabled={laid.trace.length === 0}
          onClick={() => removePoint(laid.trace.length - 1)}
        >
          {w.photo.takeBack}
        </button>
        <button
          type="button"
          class="link"
          disabled={laid.trace.length === 0}
          onClick={() => layPhoto({ trace: [] })}
        >
          {w.photo.clear}
        </button>
      </p>
      <p class="ways makes">
        <button type="button" class="btn main" disabled={!ready} onClick={() => make('timber')}>
          {w.photo.timber}
        </button>
        <button type="button" class="btn" disabled={!ready} onClick={() => make('outline')}>
          {w.photo.outline}
        </button>
      </p>
      <p class="made" role="status">
        {p.made === null ? null : (
          <>
            {p.made === 'timber' ? w.photo.isTimber : w.photo.isOutline}{' '}
            <a href={`/piece/${p.id}`} onClick={follow}>
              {w.photo.look}
            </a>
          </>
        )}
      </p>
      {p.made === null || problems.value.length === 0 ? null : <Unplanned />}
    </>
  )
}

// A part may lie where another is: said here, with the way back.
function Unplanned() {
  return (
    <div class="unplanned" role="alert">
      <p>{w.photo.unplanned}</p>
      {problems.value.slice(0, 3).map(x => (
        <p key={x.path} class="f">
          {x.found}; {w.photo.allowed} {x.allowed}
        </p>
      ))}
      <p class="f">{w.photo.mends}</p>
      <button type="button" class="link" disabled={!canUndo.value} onClick={undo}>
        {w.tool.undo}
      </button>
    </div>
  )
}

function worstError(laid: Laid): number {
  const step = Math.max(1, Math.ceil(laid.trace.length / MOST_LOOKED))
  return laid.trace
    .filter((_, k) => k % step === 0)
    .reduce((most, place) => Math.max(most, errorAt(laid, place)), 0)
}

function extent(ring: readonly (readonly [number, number])[]): readonly [number, number] {
  const over = (k: 0 | 1) => {
    const all = ring.map(p => p[k])
    return Math.max(...all) - Math.min(...all)
  }
  return [over(0), over(1)]
}
