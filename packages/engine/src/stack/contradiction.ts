import type { Entries } from '../piece/entry.ts'
import type { Cut, Marking, Piece, Pour } from '../piece/piece-schema.ts'
import type { Problem } from '../piece/problem.ts'
import { decimals } from '../quantity/format.ts'
import { ofKind } from './cut-kind.ts'
import { halfWidthAt } from './groove.ts'

/** What a document says of its cuts, pours, formers and scales that cannot be meant, though each key is allowed. */
export function contradictions(piece: Piece, entries: Entries): Problem[] {
  return [
    ...ofNothing(piece),
    ...piece.cuts.flatMap((c, i) => [
      ...ofCut(c, `/cuts/${i}`),
      ...ofKind(c, `/cuts/${i}`, entries).map(([key, found, allowed, example]) =>
        problem(`/cuts/${i}/${key}`, found, allowed, example)
      )
    ]),
    ...piece.pours.flatMap((p, i) => ofPour(p, `/pours/${i}`, piece, entries)),
    ...piece.markings.flatMap((m, i) => ofMarking(m, `/markings/${i}`)),
    ...piece.mould.formers.flatMap((f, i) =>
      f.to !== undefined && f.to <= f.from
        ? [
            problem(
              `/mould/formers/${i}/to`,
              `a top at ${decimals(f.to, 2)} under a foot at ${decimals(f.from, 2)}`,
              'a top above the foot'
            )
          ]
        : []
    )
  ]
}

function problem(path: string, found: string, allowed: string, example = ''): Problem {
  return { path, found, allowed, example }
}

// Resin that is only laid on or let in needs something to lie on.
function ofNothing({ timbers, pours }: Piece): Problem[] {
  if (timbers.length > 0 || pours.some(p => p.kind === 'cast')) return []
  return [
    problem(
      '/timbers',
      'no timber, and no pour into a mould',
      'a timber, or a pour of kind "cast": the others lie on something or fill a cut in it',
      '[{ "species": "maple-sugar", "outline": { "rectangle": [380, 180] }, "thickness": 24 }]'
    )
  ]
}

/** How far a width given with a V may stray from what depth and angle make, mm: rounding in a document. */
const WIDTH_TOL_MM = 0.01

function ofCut(c: Cut, at: string): Problem[] {
  const out: Problem[] = []
  if (c.along !== undefined && c.profile !== 'v' && c.width === undefined)
    out.push(problem(`${at}/width`, 'nothing', 'the width of the groove', '"width": 6'))
  if (c.shape !== undefined && c.profile !== 'flat')
    out.push(
      problem(
        `${at}/profile`,
        `"${c.profile}" with a shape`,
        '"flat" for a shape; V and round run along a line',
        '"along": { "points": [[0, 0], [80, 0]] }'
      )
    )
  if (c.along !== undefined && c.profile === 'v') {
    const depth = c.depth ?? c.finishedDepth
    if (depth === undefined)
      out.push(
        problem(`${at}/through`, 'a V right through', 'a depth: a V has no width without one', '"depth": 3')
      )
    else {
      const width = 2 * halfWidthAt({ kind: 'v', widthMm: 0, angleDeg: c.angle }, depth)
      if (c.width !== undefined && Math.abs(c.width - width) > WIDTH_TOL_MM)
        out.push(
          problem(
            `${at}/width`,
            `${decimals(c.width, 2)} mm, but a V of ${decimals(c.angle, 1)}° this deep is ${decimals(width, 2)} mm wide`,
            'a V without a width: depth and angle make it'
          )
        )
    }
  }
  return out
}

function ofPour(p: Pour, at: string, piece: Piece, entries: Entries): Problem[] {
  const out: Problem[] = []
  const say = (key: string, found: string, allowed: string, example = '') =>
    out.push(problem(`${at}/${key}`, found, allowed, example))
  if (p.kind === 'inlay' && p.into === undefined)
    say('into', 'nothing', 'the cuts this inlay fills', '"into": ["scale"]')
  if (p.kind === 'cast' && p.into !== undefined)
    say('into', '"into" with a pour into the mould', '"kind": "inlay"', '"kind": "inlay"')
  const shares = p.marbling?.reduce((sum, m) => sum + m.share, 0)
  if (shares !== undefined && Math.abs(shares - 100) > 0.5)
    say('marbling', `shares of ${decimals(shares, 1)} % together`, '100 % together')
  if (p.fill === 'cut' && p.kind !== 'inlay')
    say('fill', '"cut"', '"cut" for an inlay; "timber" in the mould', '"fill": "timber"')
  if (p.fill === 'timber' && p.kind !== 'cast')
    say('fill', `"timber" with ${withArticle(p.kind)}`, '"timber" in the mould', '"kind": "cast"')
  if (p.fill === 'timber' && p.kind === 'cast' && piece.timbers.length === 0)
    say('fill', '"timber", and the piece has none', 'a depth, a height or a mass', '"depth": 8')
  if (p.height !== undefined && p.kind === 'seal')
    say('height', 'the height of a seal coat', 'its depth or mass', '"depth": 0.2')
  if (p.height !== undefined && p.kind === 'flood' && (p.face ?? 'front') === piece.down)
    say(
      'height',
      'a height as cast, for a flood over the face that lay on the mould: it lies below 0 there',
      'the depth or the mass of the layer',
      '"depth": 2'
    )
  if (p.kind === 'inlay' && p.into !== undefined) {
    const faces = new Set(entries.cuts.filter(c => p.into!.includes(c.id)).map(c => c.value.face))
    if (faces.size > 1) say('into', 'cuts in both faces', 'cuts of one face: the other lies down')
    else if (p.face !== undefined && !faces.has(p.face))
      say('face', `"${p.face}"`, 'the face its cuts are in', `"face": "${[...faces][0]}"`)
  }
  return out
}

function withArticle(kind: Pour['kind']): string {
  return kind === 'inlay' ? 'an inlay' : `a ${kind}`
}

/** Most points of the free lines of a marking, all together: what crosses itself costs their square. */
const MOST_MARKING_POINTS = 4000

function ofMarking(m: Marking, at: string): Problem[] {
  const points = (m.lines ?? []).reduce((sum, line) => sum + line.length, 0)
  if (points > MOST_MARKING_POINTS)
    return [problem(`${at}/lines`, `${points} points`, `at most ${MOST_MARKING_POINTS} points in all lines`)]
  const { linear } = m
  if (linear === undefined) return []
  const long = Math.hypot(linear.to[0] - linear.from[0], linear.to[1] - linear.from[1])
  return long > 0 ? [] : [problem(`${at}/linear/to`, 'a scale that ends where it starts', 'two places apart')]
}
