import { bounds } from '../../engine/src/shape/measure.ts'
import type { CoreModel } from '../../engine/src/sheets/core-model.ts'
import { coreStrip, type Levels } from '../../engine/src/sheets/core-strip.ts'
import { coreWords } from '../../engine/src/sheets/core-words.ts'
import { frontPatch } from '../../engine/src/sheets/front-patch.ts'
import type { Sheet } from '../../engine/src/sheets/mark.ts'
import type { PageData, PageView } from '../../engine/src/sheets/page-data.ts'
import { pointerMarks, pointerTo } from '../../engine/src/sheets/pointer.ts'
import { sectionAt } from '../../engine/src/sheets/section-at.ts'
import { svgBody, svgMarks } from '../../engine/src/sheets/svg.ts'

/** What else on the page may ask of the pointer. */
export interface Pointer {
  /** Counts the heights of the core from the finished back or from the base of the mould. */
  count(levels: Levels): void
}

/** Steps of the arrow keys, mm: alone, and with Shift. */
const STEP_MM = 1
const LONG_STEP_MM = 10
/** How long the pointer rests before the core is said aloud, ms. */
const REST_MS = 350

/**
 * The pointer on the plan: by hand, pen or finger where it points, by the arrow keys where it is focused. The
 * core strip, the look from the front and the section across are drawn anew from the engine's own core there.
 */
export function movePointer(model: CoreModel, data: PageData): Pointer {
  const pad = document.getElementById('plan')
  const says = document.getElementById('core-says')
  const core = document.querySelector<SVGSVGElement>('#core svg')
  const patch = document.querySelector<SVGSVGElement>('#patch svg')
  const across = document.querySelector<SVGSVGElement>('#across svg')
  const { outline } = model.geometry
  const box = bounds(outline)
  let [x, y] = data.pointer
  let levels: Levels = 'finished'
  let waiting = 0
  let rest = 0

  const draw = () => {
    waiting = 0
    if (pad) {
      pad.dataset['x'] = String(x)
      pad.dataset['y'] = String(y)
    }
    for (const view of data.views) {
      const group = document.querySelector(`.plan.${view.id}.${view.face} .pointer`)
      if (group) group.innerHTML = svgMarks(pointerMarks(view, x, y), view.heightMm)
    }
    fill(core, coreStrip(model, x, y, { levels, ...data.strip }))
    fill(patch, frontPatch(model, x, y, data.patchMm))
    fill(across, sectionAt(model, x, y, data.across))
    clearTimeout(rest)
    rest = setTimeout(() => {
      if (says) says.textContent = coreWords(model, x, y)
    }, REST_MS) as unknown as number
  }
  const soon = () => {
    if (waiting === 0) waiting = requestAnimationFrame(draw)
  }
  const go = (toX: number, toY: number) => {
    // Along an edge the pointer slides: each way by itself.
    const slid = pointerTo(outline, [x, y], [toX, toY])
    ;[x, y] = pointerTo(outline, pointerTo(outline, slid, [toX, slid[1]]), [slid[0], toY])
    soon()
  }

  if (pad) {
    pad.tabIndex = 0
    pad.setAttribute('role', 'application')
    pad.setAttribute(
      'aria-label',
      'Plan. The arrow keys move the pointer by a millimetre, with Shift by ten; the core there is read out.'
    )
    pad.setAttribute('aria-describedby', 'core-says')
    pad.addEventListener('keydown', event => {
      const step = event.shiftKey ? LONG_STEP_MM : STEP_MM
      // Seen from behind, right on the drawing is left on the plan.
      const right = faceShown() === 'back' ? -step : step
      const by = {
        ArrowRight: [right, 0],
        ArrowLeft: [-right, 0],
        ArrowUp: [0, step],
        ArrowDown: [0, -step]
      }[event.key]
      if (by === undefined || event.altKey || event.ctrlKey || event.metaKey) return
      event.preventDefault()
      go(x + by[0]!, y + by[1]!)
    })
    const point = (event: PointerEvent) => {
      const drawing = (event.target as Element).closest<SVGSVGElement>('svg.plan')
      if (drawing === null) return
      const place = placeOf(drawing, data.views, event)
      if (place === null) return
      // Beside the piece the pointer stays where it was: the way to the core strip leads over the margin.
      const beside =
        place[0] < box.minX - SLACK_MM ||
        place[0] > box.maxX + SLACK_MM ||
        place[1] < box.minY - SLACK_MM ||
        place[1] > box.maxY + SLACK_MM
      if (!beside) go(place[0], place[1])
    }
    pad.addEventListener('pointermove', point)
    pad.addEventListener('pointerdown', point)
  }
  return {
    count: to => {
      levels = to
      soon()
    }
  }
}

/** How far beside the edge still counts as on it, mm. */
const SLACK_MM = 4

function faceShown(): string {
  return document.querySelector<HTMLElement>('.sheet')?.dataset['face'] ?? 'front'
}

function placeOf(
  drawing: SVGSVGElement,
  views: readonly PageView[],
  event: PointerEvent
): [number, number] | null {
  const view = views.find(v => drawing.classList.contains(v.id) && drawing.classList.contains(v.face))
  const matrix = drawing.getScreenCTM()
  if (view === undefined || matrix === null) return null
  const spot = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse())
  const x = (spot.x - view.originX) / view.scale
  return [view.face === 'back' ? -x : x, (view.heightMm - spot.y - view.originY) / view.scale]
}

function fill(drawing: SVGSVGElement | null, sheet: Sheet): void {
  if (drawing === null) return
  drawing.setAttribute('viewBox', `0 0 ${sheet.widthMm} ${sheet.heightMm.toFixed(2)}`)
  drawing.setAttribute('height', `${(sheet.heightMm / 4).toFixed(3)}rem`)
  drawing.innerHTML = svgBody(sheet)
}
