import type { Change as BoardChange } from '../../../engine/src/draw/board.ts'
import { timberMirrored, timberMoved, timberSplit, timberTurned } from '../../../engine/src/draw/board.ts'
import type { ClipKind } from '../../../engine/src/draw/clipping.ts'
import type { Frame } from '../../../engine/src/draw/frame.ts'
import { frameOf, shapeSized, timberResized, timberSized } from '../../../engine/src/draw/frame.ts'
import { liveEdge, liveEdgeTimber } from '../../../engine/src/draw/live-edge.ts'
import { vertexAdded, vertexMoved, vertexRemoved, verticesOf } from '../../../engine/src/draw/outline.ts'
import { clippingText, copied, pasted, readClipping } from '../../../engine/src/draw/paste.ts'
import { shapeMirrored } from '../../../engine/src/draw/shape-mirror.ts'
import { shapeMoved, shapeTurned } from '../../../engine/src/draw/shape-place.ts'
import type { Handle, ShapeChange } from '../../../engine/src/draw/shape-resize.ts'
import { handlesOf, shapeResized } from '../../../engine/src/draw/shape-resize.ts'
import { traced } from '../../../engine/src/draw/trace.ts'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import type { PieceDocument } from '../../../engine/src/piece/piece-schema.ts'
import type { ShapeDocument } from '../../../engine/src/piece/shape-field.ts'

/** A document or part of one: plain JSON. */
type Json = Record<string, unknown>

type Pair = readonly [number, number]

/** A change of a piece by a drawing tool. `at`: JSON Pointer of the entry; places and lengths in mm. */
export type ToolChange =
  | { readonly tool: 'handles'; readonly at: string }
  /** One number of the frame, typed exactly: a place or size in mm, the turn in degrees. */
  | { readonly tool: 'frame'; readonly at: string; readonly key: keyof Frame; readonly to: number }
  | { readonly tool: 'turn'; readonly at: string; readonly deg: number; readonly about: Pair }
  | {
      readonly tool: 'mirror'
      readonly at: string
      readonly axis: 'x' | 'y'
      readonly c: number
      readonly copy: boolean
    }
  | { readonly tool: 'split'; readonly at: string; readonly line: readonly [Pair, Pair] }
  | { readonly tool: 'resize'; readonly at: string; readonly handle: Handle; readonly to: Pair }
  | {
      readonly tool: 'vertex'
      readonly at: string
      readonly ring: number
      readonly index: number
      readonly to: Pair | null
    }
  | {
      readonly tool: 'add vertex'
      readonly at: string
      readonly ring: number
      readonly index: number
      readonly to?: Pair
    }
  | { readonly tool: 'copy'; readonly at: string }
  | { readonly tool: 'paste'; readonly text: string }
  | { readonly tool: 'stroke'; readonly stroke: readonly Pair[] }
  | {
      readonly tool: 'live edge'
      readonly top: readonly Pair[]
      readonly bottom: readonly Pair[]
      readonly back: readonly [Pair, Pair]
      readonly species: string
      readonly thickness: number | string
      readonly moisture: number | string
    }

/** What came of it: a patch to make, or what was asked for, or words why not. */
export interface ToolAnswer {
  readonly patch: Patch
  readonly says: readonly string[]
  readonly problem: string | null
  readonly text?: string
  readonly points?: readonly Pair[]
  readonly frame?: Frame
  readonly handles?: readonly { readonly handle: Handle; readonly at: Pair }[]
  readonly vertices?: readonly {
    readonly ring: number
    readonly index: number
    readonly x: number
    readonly y: number
  }[]
  readonly files?: Readonly<Record<string, string>>
}

/** Most vertices offered as handles: more are no longer told apart. */
const MOST_VERTICES = 150
/** How far a pasted entry lies beside what it was copied from, mm. */
const PASTE_SHIFT: Pair = [12, -12]

const KINDS: Readonly<Record<string, ClipKind>> = {
  timbers: 'timber',
  pours: 'pour',
  cuts: 'cut',
  hardware: 'hardware',
  markings: 'marking',
  edges: 'edge'
}

/** Works a tool on a document, which stays as it was. */
export function toolAnswer(
  json: Json,
  files: Readonly<Record<string, string>>,
  change: ToolChange
): ToolAnswer {
  const document = json as unknown as PieceDocument
  switch (change.tool) {
    case 'handles': {
      const shape = shapeAt(document, change.at)
      if (shape === null) return refused('this has no outline to pull at')
      const vertices = verticesOf(shape).map(({ ring, index, x, y }) => ({ ring, index, x, y }))
      return {
        ...done([]),
        frame: frameOf(shape, files),
        handles: handlesOf(shape, files),
        vertices: vertices.length > MOST_VERTICES ? [] : vertices
      }
    }
    case 'frame':
      return framed(document, change.at, change.key, change.to, files)
    case 'turn':
      return list(change.at) === 'timbers'
        ? board(timberTurned(document, indexOf(change.at), change.deg, change.about, files))
        : shaped(document, change.at, s => ({ shape: shapeTurned(s, change.deg, change.about) }))
    case 'mirror':
      return list(change.at) === 'timbers'
        ? board(timberMirrored(document, indexOf(change.at), change.axis, change.c, { copy: change.copy }))
        : shaped(document, change.at, s => {
            const shape = shapeMirrored(s, change.axis, change.c)
            return shape === null ? { problem: 'a shape from a file; allowed: one drawn here' } : { shape }
          })
    case 'split':
      return board(timberSplit(document, indexOf(change.at), change.line, files))
    case 'resize':
      return list(change.at) === 'timbers'
        ? board(timberResized(document, indexOf(change.at), change.handle, change.to, files))
        : shaped(document, change.at, s => shapeResized(s, change.handle, change.to, files))
    case 'vertex':
      return shaped(document, change.at, s =>
        change.to === null
          ? vertexRemoved(s, change.ring, change.index)
          : vertexMoved(s, change.ring, change.index, change.to)
      )
    case 'add vertex':
      return shaped(document, change.at, s => vertexAdded(s, change.ring, change.index, 0.5, change.to))
    case 'copy': {
      const kind = KINDS[list(change.at)]
      const clipping = kind === undefined ? null : copied(document, kind, indexOf(change.at), files)
      return clipping === null
        ? refused('nothing there to copy')
        : { ...done([]), text: clippingText(clipping) }
    }
    case 'paste': {
      const clipping = readClipping(change.text)
      if ('problem' in clipping) return refused(clipping.problem)
      const got = pasted(document, clipping, files, PASTE_SHIFT)
      return 'problem' in got
        ? refused(got.problem)
        : { patch: got.patch, says: got.says, problem: null, files: got.files }
    }
    case 'stroke': {
      const line = traced(change.stroke, { closeMm: 0 })
      return 'problem' in line ? refused(line.problem) : { ...done([]), points: line.points }
    }
    case 'live edge': {
      const edge = liveEdge(change.top, change.bottom, change.back)
      const { species, thickness, moisture } = change
      const got = liveEdgeTimber(document, edge, { species, thickness, moisture })
      return 'problem' in got ? refused(got.problem) : done(got.patch)
    }
  }
}

function done(patch: Patch): ToolAnswer {
  return { patch, says: [], problem: null }
}

function refused(problem: string): ToolAnswer {
  return { patch: [], says: [], problem }
}

function board(change: BoardChange): ToolAnswer {
  return 'problem' in change
    ? refused(change.problem)
    : { patch: change.patch, says: change.says ?? [], problem: null }
}

const list = (at: string) => at.split('/')[1] ?? ''
const indexOf = (at: string) => Number(at.split('/')[2])

// The outline of a timber, the shape of a cut, the outline of the piece.
function keyOf(at: string): string {
  return list(at) === 'timbers' || at === '' ? 'outline' : 'shape'
}

function shapeAt(document: PieceDocument, at: string): ShapeDocument | null {
  const entry =
    at === '' ? document : (document[list(at) as 'cuts'] as unknown as Json[] | undefined)?.[indexOf(at)]
  return ((entry as Json | undefined)?.[keyOf(at)] as ShapeDocument | undefined) ?? null
}

// A timber keeps what belongs to it: its grain turns, its measured top moves, its underside is sized with it.
function framed(
  document: PieceDocument,
  at: string,
  key: keyof Frame,
  to: number,
  files: Readonly<Record<string, string>>
): ToolAnswer {
  const shape = shapeAt(document, at)
  if (shape === null) return refused('this has no outline')
  const was = frameOf(shape, files)
  const timber = list(at) === 'timbers'
  const i = indexOf(at)
  const by = to - was[key]
  switch (key) {
    case 'x':
    case 'y': {
      const [dx, dy] = key === 'x' ? [by, 0] : [0, by]
      return timber
        ? board(timberMoved(document, i, dx, dy))
        : shaped(document, at, s => ({ shape: shapeMoved(s, dx, dy) }))
    }
    case 'turnDeg':
      return timber
        ? board(timberTurned(document, i, by, [was.x, was.y], files))
        : shaped(document, at, s => ({ shape: shapeTurned(s, by, [was.x, was.y]) }))
    default: {
      const side = key === 'widthMm' ? 'width' : 'height'
      return timber
        ? board(timberSized(document, i, side, to, files))
        : shaped(document, at, s => shapeSized(s, side, to, files))
    }
  }
}

function shaped(
  document: PieceDocument,
  at: string,
  change: (shape: ShapeDocument) => ShapeChange
): ToolAnswer {
  const shape = shapeAt(document, at)
  if (shape === null) return refused('this has no outline')
  const got = change(shape)
  if ('problem' in got) return refused(got.problem)
  return done([{ op: 'replace', path: `${at}/${keyOf(at)}`, value: got.shape }])
}
