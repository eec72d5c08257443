import { batchesOf } from './cast/batches.ts'
import { castOf } from './cast/cast.ts'
import { clockOf } from './cast/clock.ts'
import { factsOf, materialsOf } from './cast/facts.ts'
import { floatingOf } from './cast/floating.ts'
import { afterReadings } from './cast/learned-input.ts'
import { mouldPlan } from './cast/mould.ts'
import { pourRound } from './cast/pour-rounds.ts'
import { AS_RECORDED } from './cast/speed.ts'
import type { WholeCast } from './cast/whole/whole-cast.ts'
import { buyList, needsOf } from './cost/buy.ts'
import { useDays } from './cost/use-days.ts'
import { forMachine } from './cuts/for-machine.ts'
import { handWork } from './cuts/hand/hand-work.ts'
import { noMachineWork } from './cuts/no-machine.ts'
import type { Quantity, Work } from './findings/work.ts'
import type { FaceFinish } from './finish/faces.ts'
import { facesOf } from './finish/faces.ts'
import { livingAir } from './fits/air.ts'
import { appearanceOf } from './fits/appearance.ts'
import { bowOf } from './fits/bow.ts'
import type { FaceFilm } from './fits/chain.ts'
import { sizeChains } from './fits/chain.ts'
import { hardwareFits } from './fits/hardware.ts'
import { inUseOf } from './fits/in-use.ts'
import { loadedPiece } from './fits/loaded-piece.ts'
import { movesOf } from './fits/moves.ts'
import { partsSeen } from './fits/part-seen.ts'
import { seasonsOf } from './fits/season.ts'
import { supportProblems } from './fits/supports.ts'
import { timberFactsOf } from './fits/timber-facts.ts'
import { hidingOf } from './fits/tint.ts'
import { blanksFor, chanceOfGood } from './mould/spoil.ts'
import { asBuilt } from './piece/as-built.ts'
import { entriesOf } from './piece/entry.ts'
import type { Piece, PieceDocument } from './piece/piece-schema.ts'
import { InputProblem } from './piece/problem.ts'
import type { Read } from './piece/read.ts'
import type { Reading } from './piece/reading-schema.ts'
import type { Files } from './piece/region.ts'
import type { Shop } from './piece/shop-schema.ts'
import { standingReadings } from './piece/standing-readings.ts'
import { coversOf } from './stack/cover.ts'
import { geometryOf } from './stack/geometry.ts'
import { walk } from './stack/walk.ts'
import { hasWaste } from './stack/waste.ts'
import { asWorked } from './steps/as-worked.ts'
import { orderFaults } from './steps/fault.ts'
import { blanksAtOnce, mouldFills } from './steps/mould-fills.ts'
import { orderOf } from './steps/order.ts'
import type { Step } from './steps/step.ts'

/** What a plan is made from. */
export interface PlanInput {
  readonly piece: Read<PieceDocument, Piece>
  readonly shop: Shop
  readonly readings?: readonly Reading[]
  /** Texts of the files the piece names. */
  readonly files?: Files
  /** Name of the piece file, for messages. */
  readonly source?: string
  readonly effort?: 'preview' | 'full'
  /** What counts as now, ISO 8601 with offset: by it stock has expired; left out: nothing has, unless a pour says its moment. */
  readonly asOf?: string
  /** The cast of the whole mould, of this very piece, shop and readings: it stands in the place of the column's. */
  readonly whole?: WholeCast | null
}

/**
 * Runs the stages in the order of the flow; each reads only what stands before it.
 * @throws InputProblem when the piece cannot be used
 */
export function workOf(input: PlanInput): Work {
  const { document } = input.piece
  const { shop } = input
  const source = input.source ?? 'piece'
  const readings = standingReadings(input.readings ?? [])
  // What was read stands in the place of what was planned.
  const { piece, levelsMm } = asBuilt(input.piece.value, readings)
  const effort = input.effort ?? 'full'
  const entries = entriesOf(piece, source)
  const bought = materialsOf(piece, shop, source)
  const geometry = geometryOf(piece, entries, input.files ?? {}, source)
  const astray = piece.supports === undefined ? [] : supportProblems(piece.supports, geometry.outline)
  if (astray.length > 0) throw new InputProblem(source, astray)
  // Pins tie what a machine cuts; without one nothing is tied, unless the piece names them.
  const tied = shop.machine !== undefined || piece.pins !== undefined
  const facts = factsOf(piece, bought).map((f, i) => ({ ...f, measuredMm: levelsMm[i]! }))
  const walked = (order: readonly Step[]) => named(source, () => walk(piece, entries, geometry, order, facts))
  const ordered = orderOf(piece, entries, hasWaste(piece, geometry), tied)
  const planned = walked(ordered)
  const steps = asWorked(
    ordered,
    planned.states.map(s => s.highZ - s.lowZ),
    readings
  )
  const stack = steps === ordered ? planned : walked(steps)
  const labelled = { choices: bought.resins, speeds: bought.resins.map(() => AS_RECORDED) }
  const columns = castOf(
    { stack, ...labelled, board: bought.base, shop, effort, stones: bought.stones },
    readings
  )
  const whole = input.whole ?? null
  const casts = columns.map((c, i) => whole?.casts[i] ?? c)
  // From here on a resin is as fast as its readings left it.
  const { choices, speeds } = afterReadings(labelled, casts)
  const materials = { ...bought, resins: choices }
  const seasons = seasonsOf(
    piece,
    entries.timbers.map(t => t.id),
    geometry.timbers.map(t => t.upper),
    materials,
    shop,
    readings
  )
  const batches = piece.pours.map((pour, i) =>
    batchesOf(pour, stack.pours[i]!, materials.resins[i]!, materials.tints[i]!, speeds[i]!, shop)
  )
  const quantity = quantityOf(piece)
  const fills = mouldFills(steps, quantity)
  const rounds = piece.pours.map((pour, i) => {
    const at = steps.findIndex(s => s.kind === 'pour' && s.pour!.index === i)
    return pourRound(
      {
        pour,
        stack: stack.pours[i]!,
        choice: materials.resins[i]!,
        tint: materials.tints[i]!,
        speed: speeds[i]!,
        shop
      },
      batches[i]!,
      blanksAtOnce(fills, at, quantity.blanks)
    )
  })
  const mould = mouldPlan(stack, materials)
  const floating = floatingOf(
    stack,
    materials,
    seasons.map(s => s.moisturePct)
  )
  const faces = facesOf({ stack, materials, shop, readings, casts })
  const covers = coversOf(stack)
  const clock = clockOf(steps, casts, [materials.coats.front, materials.coats.back], materials.markingResins)
  const air = livingAir(piece, materials)
  const films = { front: filmOf(faces[0]), back: filmOf(faces[1]) }
  const bowing = { stack, materials, casts, clock, seasons, shop, faces }
  const loaded = piece.supports === undefined ? null : loadedPiece(bowing)
  const known = { materials, seasons, air, casts, clock, shop, films }
  const chains = sizeChains(stack, known)
  const fits = hardwareFits(stack, known, chains)
  const appearance = appearanceOf(stack, materials, covers)
  const machined = tied
    ? forMachine({ stack, materials, shop, readings, seasons, clock })
    : noMachineWork(stack)
  const timberFacts = timberFactsOf(stack, materials, shop, seasons, floating)
  const needs = needsOf({
    stack,
    materials,
    batches,
    mould,
    faces,
    shop,
    blanks: quantity.blanks,
    moulds: quantity.gang,
    boardsMm: timberFacts.map(t => t.rough?.startMm ?? null),
    day: useDays(steps, clock, input.asOf)
  })
  return {
    document,
    piece,
    shop,
    readings,
    effort,
    entries,
    steps,
    faults: orderFaults(piece, entries, steps),
    materials,
    stack,
    speeds,
    casts,
    whole,
    clock,
    batches,
    rounds,
    fills,
    mould,
    floating,
    air,
    seasons,
    timberFacts,
    hiding: hidingOf(piece, materials, stack.pours),
    bow: bowOf(bowing),
    inUse: loaded === null || piece.supports === undefined ? null : inUseOf(loaded, piece.supports),
    moves: movesOf(stack, materials, floating, mould),
    hand: handWork({ piece, entries, steps, stack, shop, timbers: materials.timbers }),
    ...machined,
    chains,
    covers,
    appearance,
    partsSeen: partsSeen(stack, appearance.looks, fits),
    fits,
    faces,
    quantity,
    needs,
    buy: buyList(needs, shop)
  }
}

// What a finish puts on sizes; fits stand before the finish and take it as numbers.
function filmOf({ filmMm, coats, coat }: FaceFinish): FaceFilm {
  return { filmMm, coats, floods: coat?.kind === 'flood' }
}

// The stack knows no files: what it cannot use is told by the name of the file it came from.
function named<T>(source: string, make: () => T): T {
  try {
    return make()
  } catch (e) {
    throw e instanceof InputProblem ? new InputProblem(source, e.problems) : e
  }
}

function quantityOf(piece: Piece): Quantity {
  const q =
    typeof piece.quantity === 'number'
      ? { pieces: piece.quantity, blanks: undefined, loss: 5, certainty: 90, gang: 1 }
      : piece.quantity
  // One piece is made until it is good: the question of blanks arises with a batch.
  const enough = q.pieces === 1 ? 1 : blanksFor(q.pieces, q.loss / 100, q.certainty / 100).blanks
  const blanks = Math.max(q.pieces, q.blanks ?? enough)
  return {
    pieces: q.pieces,
    lossPct: q.loss,
    certaintyPct: q.certainty,
    enough,
    blanks,
    chance: chanceOfGood(q.pieces, blanks, q.loss / 100),
    gang: q.gang,
    moulds: Math.ceil(blanks / q.gang)
  }
}
