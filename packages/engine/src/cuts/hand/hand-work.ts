import type { TimberRecord } from '../../catalogue/timber-record.ts'
import type { Entries } from '../../piece/entry.ts'
import { grainDegOf } from '../../piece/grain.ts'
import type { Face, Piece } from '../../piece/piece-schema.ts'
import type { Shop } from '../../piece/shop-schema.ts'
import { decimals } from '../../quantity/format.ts'
import { intersection } from '../../shape/combine.ts'
import { area, bounds, perimeter } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { strokeAll } from '../../stack/groove-region.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Step } from '../../steps/step.ts'
import { alongMinutes, sledMinutes, TEMPLATE_MIN } from './bench-minutes.ts'
import { byDrill } from './by-drill.ts'
import { byRouter, routerBits } from './by-router.ts'
import { bySaw, outlined } from './by-saw.ts'
import type { Drawer } from './drawer.ts'
import { drawerOf } from './drawer.ts'
import type { Doing, HandCut, HandJob, Way, WayChoice } from './hand-cut.ts'
import { routerPasses, tearsEasily } from './pass-depth.ts'
import { coversFace } from './plan-form.ts'
import { sledPlan } from './sled.ts'

/** What hand work is reckoned from. */
export interface HandParts {
  readonly piece: Piece
  readonly entries: Entries
  readonly steps: readonly Step[]
  readonly stack: Stack
  readonly shop: Shop
  readonly timbers: readonly TimberRecord[]
}

/** Every cut that no machine makes, in the order of the steps; without a machine in the shop, all of them and flattening. */
export function handWork(parts: HandParts): HandCut[] {
  const drawer = drawerOf(parts.shop)
  return madeOnce(parts.piece, workOf(parts, drawer))
}

/** What makes two openings one: the face, the tool and the shape, wherever it lies; null for what shares with none. */
export function openingKey(piece: Piece, h: HandCut): string | null {
  const cut = h.of === 'cut' && h.way === 'router' ? piece.cuts[h.index]! : undefined
  if (cut?.shape === undefined || cut.kind === 'outline' || h.doing === null) return null
  const { at: _at, ...form } = cut.shape
  return `opening ${h.face} ${h.doing.tool} ${JSON.stringify(form)}`
}

// A template that serves twice is made once.
function madeOnce(piece: Piece, list: readonly HandCut[]): HandCut[] {
  const made = new Set<string>()
  return list.map(h => {
    const key = openingKey(piece, h)
    if (key === null) return h
    if (made.has(key)) return { ...h, makingMinutes: 0 }
    made.add(key)
    return h
  })
}

function workOf(parts: HandParts, drawer: Drawer): HandCut[] {
  return parts.steps.flatMap((step, i): HandCut[] => {
    switch (step.kind) {
      case 'cut':
        return byMachine(parts.shop, step.cut!.value.way) ? [] : [cutByHand(parts, drawer, step, i)]
      case 'mark':
        return byMachine(parts.shop, step.marking!.value.way) ? [] : [cutByHand(parts, drawer, step, i)]
      case 'flatten':
        return parts.shop.machine === undefined ? [flattened(parts, step, i)] : []
      case 'trim':
        return [trimmedOff(parts, step, i)]
      case 'work edges':
        return parts.piece.edges.flatMap((_, k) =>
          byMachine(parts.shop, parts.piece.edges[k]!.way) ? [] : [edgeWorked(parts, i, k)]
        )
      default:
        return []
    }
  })
}

// Where the shop names no machine, what is written for one is made by hand.
function byMachine(shop: Shop, way: Way): boolean {
  return way === 'machine' && shop.machine !== undefined
}

/** The way by hand a cut or marking would usually be made; sent out where none is. Quick: no tool is chosen. */
export function usualHandWay(parts: HandParts, step: Step, i: number): Way {
  const drawer = drawerOf(parts.shop)
  const job = jobOf(parts, step, i)
  const { drill, saw } = makers(parts, drawer, job)
  const quick: readonly (readonly [Way, () => unknown])[] =
    job.kind === 'outline'
      ? [['saw', saw]]
      : job.kind === 'bore'
        ? [
            ['drill', drill],
            ['router', () => routerBits(job, drawer)]
          ]
        : [
            ['router', () => (job.profile === 'v' ? byRouter(job, drawer, 1) : routerBits(job, drawer))],
            ['drill', drill]
          ]
  return quick.find(([, make]) => typeof make() !== 'string')?.[0] ?? 'sent out'
}

type Makers = Readonly<Record<'router' | 'drill' | 'saw' | 'sled', () => Doing | string>>

function makers({ shop, piece, stack }: HandParts, drawer: Drawer, job: HandJob): Makers {
  return {
    router: () => byRouter(job, drawer, shop.hand.template),
    drill: () => byDrill(job, drawer, shop.hand.press),
    saw: () => bySaw(job, shop.hand.saw, mainGrainDeg(piece, stack)),
    sled: () =>
      job.region !== null && !job.through && coversFace(job.region, job.outline)
        ? bySled(shop, stack.geometry.mould, job.depthMm)
        : job.region === null
          ? 'no: not a whole face'
          : 'no: closed pocket'
  }
}

function choices(made: Makers, shop: Shop): WayChoice[] {
  const hand = (['router', 'drill', 'saw', 'sled'] as const).map((way): WayChoice => {
    const done = made[way]()
    return typeof done === 'string'
      ? { way, possible: false, why: done, minutes: null }
      : { way, possible: true, why: done.tool, minutes: done.minutes }
  })
  const machine = shop.machine !== undefined
  return [
    { way: 'machine', possible: machine, why: machine ? 'in this shop' : 'none in this shop', minutes: null },
    ...hand,
    { way: 'sent out', possible: true, why: 'with a drawing and its numbers', minutes: null }
  ]
}

function cutByHand(parts: HandParts, drawer: Drawer, step: Step, i: number): HandCut {
  const job = jobOf(parts, step, i)
  const made = makers(parts, drawer, job)
  const entry = step.cut ?? step.marking!
  const { face } = entry.value
  const way = entry.value.way === 'machine' ? usualHandWay(parts, step, i) : entry.value.way
  const done = way === 'machine' || way === 'sent out' ? null : made[way]()
  const doing = done === null || typeof done === 'string' ? null : done
  return {
    step: i,
    of: step.cut === undefined ? 'marking' : 'cut',
    index: entry.index,
    id: entry.id,
    at: entry.at,
    face,
    way,
    depthMm: job.depthMm,
    doing,
    cannot: typeof done === 'string' ? done.replace(/^no: /, '') : null,
    ways: choices(made, parts.shop),
    makingMinutes: doing === null || doing.offsetMm === null ? 0 : TEMPLATE_MIN
  }
}

/** No bit goes deeper, mm; where nothing of the piece is left, the order is at fault and is told so. */
const MOST_DEPTH_MM = 1000

/** The numbers of a cut or marking at its step. */
export function jobOf({ piece, stack, timbers }: HandParts, step: Step, i: number): HandJob {
  const { geometry: g, states } = stack
  const thick = states[i]!.highZ - states[i]!.lowZ
  if (step.cut !== undefined) {
    const { index, value } = step.cut
    const region = g.cutRegions[index] ?? null
    const lines = g.cutLines[index] ?? null
    const day = stack.cuts[index]!.day
    const through = day === null
    const plan = region ?? strokeAll(lines ?? [], value.width ?? 1, piece.tolerance)
    return {
      region,
      lines,
      widthMm: value.width ?? 0,
      profile: value.profile,
      angleDeg: value.angle,
      depthMm: Math.min(MOST_DEPTH_MM, Math.max(0, day ?? thick)),
      through,
      kind: value.kind,
      outline: g.outline,
      tears: cutsTearing(plan, g.timbers, timbers),
      figures: 0,
      tolMm: piece.tolerance
    }
  }
  const { index, value } = step.marking!
  return {
    region: null,
    lines: g.markingLines[index]!,
    widthMm: value.width,
    profile: 'v',
    angleDeg: value.angle,
    depthMm: Math.max(0, stack.markings[index]!.day ?? 0),
    through: false,
    kind: 'marking',
    outline: g.outline,
    tears: false,
    figures: value.numerals.length,
    tolMm: piece.tolerance
  }
}

// Whether a cut meets timber that tears: by its plan, whatever the height.
function cutsTearing(
  plan: Region,
  bodies: Stack['geometry']['timbers'],
  timbers: readonly TimberRecord[]
): boolean {
  return timbers.some((t, k) => tearsEasily(t.id) && area(intersection(bodies[k]!.upper, plan)) > 1)
}

/** Grain of the timber that takes most of the plan, degrees from x; null without timber. */
function mainGrainDeg(piece: Piece, stack: Stack): number | null {
  let best: { readonly mm2: number; readonly deg: number } | null = null
  for (const [k, body] of stack.geometry.timbers.entries()) {
    const mm2 = area(body.upper)
    if (best === null || mm2 > best.mm2) best = { mm2, deg: grainDegOf(piece.timbers[k]!, body.upper) }
  }
  return best?.deg ?? null
}

function bySled(shop: Shop, region: Region, takeOffMm: number): Doing {
  const { hand } = shop
  const b = bounds(region)
  // A hairline of a mould is refused elsewhere: here it is a millimetre.
  const [x, y] = [Math.max(1, b.maxX - b.minX), Math.max(1, b.maxY - b.minY)]
  const sled = sledPlan({
    lengthMm: Math.max(x, y),
    widthMm: Math.min(x, y),
    bitMm: hand.sled.bit,
    baseMm: hand.routerBase,
    takeOffMm,
    routerG: hand.routerMass,
    beamThicknessMm: hand.sled.beamThickness,
    beamHeightMm: hand.sled.beamHeight
  })
  return {
    tool: `flattening cutter ${decimals(hand.sled.bit, 1)}`,
    offsetMm: null,
    bushMm: null,
    bitMm: hand.sled.bit,
    leastRadiusMm: null,
    openingCornerMm: null,
    corners: [],
    reach: null,
    passes: sled.passes,
    holes: [],
    tipMm: 0,
    sled,
    minutes: sledMinutes(sled.wayMm, sled.passes.count),
    does: [
      `Rails ${decimals(sled.railsMm, 0)} long, ${decimals(hand.sled.strips, 0)} higher than the work, level and out of twist; the carriage spans ${decimals(sled.spanMm, 0)}.`,
      'The work wedged so that it does not rock, held from its sides below the cut.',
      `${sled.rows} rows, ${sled.passes.count} pass${sled.passes.count === 1 ? '' : 'es'} of ${decimals(sled.passes.eachMm, 1)}; the last one light.`
    ]
  }
}

const only = (way: Way, doing: Doing): WayChoice[] => [
  { way, possible: true, why: doing.tool, minutes: doing.minutes },
  { way: 'sent out', possible: true, why: 'with a drawing and its numbers', minutes: null }
]

function flattened({ shop, stack }: HandParts, step: Step, i: number): HandCut {
  const face = step.face as Face
  const doing = bySled(shop, stack.geometry.mould, step.byMm ?? 0)
  return {
    step: i,
    of: 'flatten',
    index: 0,
    id: `flatten ${face}`,
    at: step.at,
    face,
    way: 'sled',
    depthMm: step.byMm ?? 0,
    doing,
    cannot: null,
    ways: only('sled', doing),
    makingMinutes: 0
  }
}

function trimmedOff({ piece, shop, stack }: HandParts, step: Step, i: number): HandCut {
  const doing = outlined(stack.geometry.outline, shop.hand.saw, mainGrainDeg(piece, stack))
  const { lowZ, highZ } = stack.states[i]!
  return {
    step: i,
    of: 'trim',
    index: 0,
    id: 'trim',
    at: step.at,
    face: step.up ?? 'front',
    way: 'saw',
    depthMm: Math.max(0, highZ - lowZ),
    doing,
    cannot: null,
    ways: only('saw', doing),
    makingMinutes: 0
  }
}

function edgeWorked({ piece, stack, timbers }: HandParts, i: number, k: number): HandCut {
  const edge = piece.edges[k]!
  const tears = cutsTearing(stack.geometry.outline, stack.geometry.timbers, timbers)
  // The bit is the profile: half its width is what it takes off.
  const passes = routerPasses(edge.size, 100, tears)
  const faces = edge.face === 'both' ? 2 : 1
  const what =
    edge.profile === 'chamfer' ? 'chamfer bit 45°' : `round-over bit of radius ${decimals(edge.size, 1)}`
  const doing: Doing = {
    tool: `${what} with bearing`,
    offsetMm: 0,
    bushMm: null,
    bitMm: null,
    leastRadiusMm: null,
    openingCornerMm: null,
    corners: [],
    reach: null,
    passes,
    holes: [],
    tipMm: 0,
    sled: null,
    minutes: alongMinutes(faces * perimeter(stack.geometry.outline), passes.count),
    does: ['The bearing runs on the edge itself. Sides across the grain first, with a backer at their ends.']
  }
  return {
    step: i,
    of: 'edge',
    index: k,
    id: `${edge.profile}, ${edge.face}`,
    at: `/edges/${k}`,
    face: edge.face === 'both' ? 'front' : edge.face,
    way: edge.way,
    depthMm: edge.size,
    doing: edge.way === 'router' ? doing : null,
    cannot: edge.way === 'router' || edge.way === 'sent out' ? null : 'an edge',
    ways: only('router', doing),
    makingMinutes: 0
  }
}
