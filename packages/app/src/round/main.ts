import './round.css'
import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import { roundWords as w } from '../text/round.ts'
import type { Cut } from './aim.ts'
import { captionOf } from './caption.ts'
import { coloursOf } from './colours.ts'
import { button, choice, element, slider, tenths } from './controls.ts'
import { Easel } from './easel.ts'
import { drawFlat } from './flat.ts'
import type { Stand } from './orbit.ts'
import { ASIDE, FIRST, moved, orbit } from './orbit.ts'

export interface RoundOptions {
  readonly dim: boolean
  readonly face?: 'front' | 'back'
  /** Level by level from the start, as where nothing else can be drawn. */
  readonly flat?: boolean
  readonly stand?: Stand
  /** Where a cut along the piece (x) or across it (y) is first made, mm; its middle where left out. */
  readonly cutAt?: { readonly x?: number; readonly y?: number }
  /** The face is chosen elsewhere: no buttons for it here. */
  readonly faceElsewhere?: boolean
}

/** The view once it stands. Heights mm from the finished back; places of cuts mm on the plan. */
export interface RoundView {
  update(model: RoundModel): void
  /** Takes away what lies nearer than a height to the face looked at. */
  peel(heightMm: number): void
  cutOpen(cut: Cut | null): void
  face(face: 'front' | 'back'): void
  theme(dim: boolean): void
  dispose(): void
}

/** Still for this long, a picture is made finer, ms. */
const REST_MS = 160

/** Shows a model in an element and lets it be turned, peeled and cut open. */
export function mountRound(host: HTMLElement, first: RoundModel, options: RoundOptions): RoundView {
  let model = first
  let stand = options.stand ?? FIRST
  let face = options.face ?? 'front'
  let dim = options.dim
  let peel = face === 'front' ? model.thicknessMm : 0
  let cut: Cut | null = null
  let pace: 'moving' | 'rest' = 'rest'
  let frame = 0
  let rest: ReturnType<typeof setTimeout> | undefined
  let easel: Easel | null = null
  let flat = options.flat ?? false

  const pad = element('div', { class: 'round-pad', tabindex: '0', role: 'img', 'aria-label': w.pad })
  const says = element('p', { class: 'round-says', role: 'status' })

  const shown = () => ({
    stand,
    face,
    fromMm: face === 'front' ? 0 : peel,
    toMm: face === 'front' ? peel : model.thicknessMm,
    cut
  })
  const paint = () => {
    frame = 0
    if (!flat) easel?.paint(shown(), pace)
    else if (pad.clientWidth > 0) drawFlat(pad, model, shown(), pad.clientWidth)
  }
  const ask = (at: 'moving' | 'rest') => {
    clearTimeout(rest)
    pace = at
    if (at === 'moving') rest = setTimeout(() => ask('rest'), REST_MS)
    else says.textContent = captionOf(model, shown())
    if (frame === 0) frame = requestAnimationFrame(paint)
  }

  const faces = choice(
    w.face,
    [
      ['front', w.front],
      ['back', w.back]
    ] as const,
    value => view.face(value)
  )
  const peels = slider(
    w.peel,
    mm => (mm >= model.thicknessMm || mm <= 0 ? w.whole : w.peeled(tenths(mm))),
    (mm, at) => {
      peel = mm
      ask(at)
    }
  )
  const cuts = choice(
    w.cut,
    [
      ['', w.notCut],
      ['x', w.along],
      ['y', w.across]
    ] as const,
    value => {
      if (value === 'y' && stand === FIRST) stand = ASIDE
      else if (value !== 'y' && stand === ASIDE) stand = FIRST
      view.cutOpen(value === '' ? null : { along: value, at: middle(value) })
    }
  )
  const places = slider(
    w.place,
    mm => w.at(tenths(mm)),
    (at, how) => {
      if (cut !== null) cut = { ...cut, at }
      ask(how)
    }
  )
  faces.node.hidden = options.faceElsewhere === true
  const turn = (next: Stand) => {
    stand = next
    ask('rest')
  }
  const ways = choice(
    w.shown,
    [
      ['body', w.solid],
      ['levels', w.levels]
    ] as const,
    value => {
      flat = value === 'levels'
      settle()
    }
  )
  const cutRow = element('div', { class: 'round-row' }, cuts.node, places.node)
  const note = element('p', { class: 'f' }, w.noPicture)
  note.hidden = true
  const nearer = element(
    'div',
    { class: 'round-row' },
    button(w.nearer, () => turn(moved(stand, 0, 0, 1.25))),
    button(w.farther, () => turn(moved(stand, 0, 0, 0.8))),
    button(w.first, () => turn(FIRST))
  )
  const root = element(
    'div',
    { class: 'round', role: 'group', 'aria-label': w.region },
    pad,
    element('div', { class: 'round-row' }, faces.node, peels.node),
    cutRow,
    element('div', { class: 'round-row' }, ways.node, nearer),
    note,
    says
  )

  function middle(along: 'x' | 'y'): number {
    const { box } = model
    const wanted = options.cutAt?.[along]
    if (wanted !== undefined) return wanted
    return along === 'x' ? (box.minY + box.maxY) / 2 : (box.minX + box.maxX) / 2
  }
  function settle(): void {
    peels.range(0, Math.round(model.thicknessMm * 10) / 10)
    peels.set(peel)
    faces.set(face)
    cuts.set(cut === null ? '' : cut.along)
    places.node.hidden = cut === null
    ways.set(flat ? 'levels' : 'body')
    root.classList.toggle('round-flat', flat)
    cutRow.hidden = nearer.hidden = flat
    pad.setAttribute('aria-label', flat ? w.flatPad : w.pad)
    if (cut !== null) {
      const { box } = model
      places.range(...(cut.along === 'x' ? ([box.minY, box.maxY] as const) : ([box.minX, box.maxX] as const)))
      places.set(cut.at)
    }
    ask('rest')
  }

  const view: RoundView = {
    update: next => {
      const whole = face === 'front' ? peel >= model.thicknessMm : peel <= 0
      model = next
      peel = whole ? (face === 'front' ? model.thicknessMm : 0) : Math.min(peel, model.thicknessMm)
      easel?.update(model)
      settle()
    },
    peel: heightMm => {
      peel = Math.min(model.thicknessMm, Math.max(0, heightMm))
      settle()
    },
    cutOpen: next => {
      cut = next
      settle()
    },
    face: next => {
      if (face !== next) peel = next === 'front' ? model.thicknessMm : 0
      face = next
      settle()
    },
    theme: next => {
      dim = next
      if (easel !== null) easel.colours = coloursOf(dim)
      ask('rest')
    },
    dispose: () => {
      clearTimeout(rest)
      cancelAnimationFrame(frame)
      watch.disconnect()
      letGo()
      easel?.dispose()
      easel = null
      root.remove()
    }
  }
  const letGo = orbit(
    pad,
    () => stand,
    (next, at) => {
      stand = next
      ask(at)
    }
  )
  const watch = new ResizeObserver(() => ask('rest'))
  host.append(root)
  watch.observe(pad)
  try {
    easel = new Easel(pad, model, coloursOf(dim), () => ask('rest'), noBodies)
  } catch {
    noBodies()
  }
  function noBodies(): void {
    flat = true
    ways.node.hidden = true
    note.hidden = false
    settle()
  }
  settle()
  return view
}
