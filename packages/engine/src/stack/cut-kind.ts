import type { Entries } from '../piece/entry.ts'
import type { Cut } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'

/** A key of a cut, what was found there, what is allowed, an example. */
type Fault = readonly [key: string, found: string, allowed: string, example: string]

/** What a keyhole, a counterbore or an inlay pocket says that cannot be meant, though each key is allowed. */
export function ofKind(c: Cut, at: string, entries: Entries): Fault[] {
  const out: Fault[] = []
  const only = (key: 'head' | 'lip' | 'around' | 'plug', kind: Cut['kind']) => {
    if (c[key] !== undefined && c.kind !== kind)
      out.push([
        key,
        `\`${key}\` in a ${c.kind}`,
        `\`${key}\` in a cut of the kind "${kind}"`,
        `"kind": "${kind}"`
      ])
  }
  only('head', 'keyhole')
  only('lip', 'keyhole')
  only('around', 'counterbore')
  only('plug', 'inlay')
  if (c.kind === 'keyhole') out.push(...ofKeyhole(c))
  if (c.kind === 'counterbore') out.push(...ofCounterbore(c, at, entries))
  if (c.kind === 'inlay') out.push(...ofInlay(c))
  return out
}

function ofKeyhole(c: Cut): Fault[] {
  const mm = (v: number) => `${decimals(v, 2)} mm`
  if (c.along?.points?.length !== 2)
    return [
      [
        'along',
        c.along?.points === undefined ? 'no points' : `${c.along.points.length} points`,
        'two points: where the screw head goes in, where it hangs',
        '"along": { "points": [[0, 0], [0, 12]] }'
      ]
    ]
  const out: Fault[] = []
  if (c.width === undefined) out.push(['width', 'nothing', 'the width of the neck', '"width": 5'])
  if (c.head === undefined) out.push(['head', 'nothing', 'across the head of the slot', '"head": 10'])
  if (c.lip === undefined)
    out.push(['lip', 'nothing', 'the thickness of what stays over the head', '"lip": 4'])
  if (c.width !== undefined && c.head !== undefined && c.head <= c.width)
    out.push([
      'head',
      `${mm(c.head)}, the neck ${mm(c.width)}`,
      'a head wider than its neck',
      `"head": ${decimals(c.width + 4, 1)}`
    ])
  const depth = c.depth ?? c.finishedDepth
  if (depth === undefined) out.push(['through', 'a keyhole right through', 'a depth', '"depth": 9'])
  else if (c.lip !== undefined && c.lip >= depth)
    out.push([
      'lip',
      `${mm(c.lip)} in a slot ${mm(depth)} deep`,
      'less than the depth',
      `"lip": ${decimals(depth / 2, 1)}`
    ])
  const [[ax, ay], [bx, by]] = c.along.points as [[number, number], [number, number]]
  if (ax === bx && ay === by)
    out.push(['along/points/1', 'a slot that ends where it starts', 'two places apart', ''])
  if (c.profile !== 'flat')
    out.push(['profile', `"${c.profile}" in a keyhole`, '"flat"', '"profile": "flat"'])
  return out
}

function ofCounterbore(c: Cut, at: string, entries: Entries): Fault[] {
  if (c.shape?.circle === undefined)
    return [['shape', 'no circle', 'the circle of the counterbore', '"shape": { "circle": 12 }']]
  if (c.through) return [['through', 'a counterbore right through', 'a depth', '"depth": 4']]
  if (c.around === undefined) return []
  const bore = entries.cuts.find(b => b.id === c.around)
  if (bore === undefined || bore.at === at || bore.value.shape?.circle === undefined)
    return [
      [
        'around',
        `"${c.around}"`,
        entries.cuts.some(b => b.value.kind === 'bore')
          ? `a round bore: ${entries.cuts.flatMap(b => (b.value.kind === 'bore' ? [b.id] : [])).join(', ')}`
          : 'a round bore of the piece, by id',
        ''
      ]
    ]
  const out: Fault[] = []
  if (c.shape.at !== undefined && (c.shape.at[0] !== 0 || c.shape.at[1] !== 0))
    out.push(['shape/at', 'a place beside `around`', 'a circle without a place: it lies about its bore', ''])
  if (c.shape.circle <= bore.value.shape.circle)
    out.push([
      'shape/circle',
      `${decimals(c.shape.circle, 2)} mm round a bore of ${decimals(bore.value.shape.circle, 2)} mm`,
      'a circle wider than its bore',
      `"circle": ${decimals(bore.value.shape.circle * 2, 1)}`
    ])
  return out
}

function ofInlay(c: Cut): Fault[] {
  if (c.shape === undefined)
    return [['shape', 'nothing', 'the shape of the inlay', '"shape": { "circle": 30 }']]
  if (c.plug === undefined)
    return [['plug', 'nothing', 'the plug that goes in', '"plug": { "thickness": 8 }']]
  const depth = c.depth ?? c.finishedDepth
  const { thickness, relief } = c.plug
  if (depth !== undefined && relief >= depth)
    return [
      [
        'plug/relief',
        `${decimals(relief, 2)} mm in a pocket ${decimals(depth, 2)} mm deep`,
        'less than the depth',
        '"relief": 0.5'
      ]
    ]
  if (depth !== undefined && thickness < depth - relief)
    return [
      [
        'plug/thickness',
        `${decimals(thickness, 2)} mm in a pocket ${decimals(depth, 2)} mm deep`,
        `at least ${decimals(depth - relief, 2)} mm: what stands proud is cut flush`,
        `"thickness": ${decimals(depth + 1, 1)}`
      ]
    ]
  return []
}
