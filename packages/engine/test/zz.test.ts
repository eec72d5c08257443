import { it } from 'vitest'
import { programSet } from '../src/programs/program-set.ts'
import { proveSet } from '../src/programs/prove-set.ts'
import { machiningOf } from '../src/cuts/operation/machining.ts'
import { checkPiece, checkShop } from '../src/piece/read.ts'
import { workOf } from '../src/work.ts'
import { PLAIN } from './findings/harness.ts'
it('x', () => {
  const piece = { ...PLAIN,
    cuts: [
      { id: 'hang', kind: 'keyhole', face: 'back', along: { points: [[100, 40], [100, 54]] }, width: 5, head: 11, lip: 4, depth: 10 },
      { id: 'hole', kind: 'bore', face: 'front', shape: { circle: 6.4, at: [-100, 40] }, through: true },
      { id: 'wide', kind: 'counterbore', face: 'front', around: 'hole', shape: { circle: 13 }, depth: 4 },
      { id: 'leaf', kind: 'inlay', face: 'front', shape: { polygon: [[80, -60], [125, -60], [125, -40], [100, -40], [100, -20], [80, -20]] }, finishedDepth: 5, plug: { thickness: 7 } },
      { id: 'v', kind: 'groove', face: 'front', along: { points: [[-120, -60], [-80, -60], [-80, -20]] }, profile: 'v', finishedDepth: 2 },
      { id: 'r', kind: 'groove', face: 'front', along: { points: [[-120, -80], [-80, -80]] }, width: 6, profile: 'round', finishedDepth: 4 },
      { id: 'f', kind: 'groove', face: 'front', along: { points: [[-60, -80], [-55, 80]] }, width: 6, finishedDepth: 4 }
    ],
    markings: [
      { id: 'scale', linear: { from: [-100, 0], to: [100, 0], length: 8, at: [0, 0.5, 1] }, width: 1, sandedAfter: 0.3, numerals: [{ text: '10', at: [0, 20], height: 8 }] },
      { id: 'big', lines: [[[-20, 60], [20, 60]]], width: 1, figures: 'outline', numerals: [{ text: '25', at: [0, 80], height: 14 }] },
      { id: 'rear', face: 'back', lines: [[[80, -60], [120, -60]]], width: 1, numerals: [{ text: '7R', at: [100, -75], height: 8 }] }
    ]
  }
  const shop = { castwright: 1, machine: { x: 800, y: 600 }, cutters: [
    { id: 'k', kind: 'keyhole-cutter', diameter: 11, length: 12, head: 4, neck: 5, plunges: true, shank: 6 },
    { id: 'f6', kind: 'flat-end-mill', diameter: 6, length: 25 }, { id: 'f3', kind: 'flat-end-mill', diameter: 3, length: 12 },
    { id: 'v60', kind: 'v-60', diameter: 12, length: 12, tip: 0.1 }, { id: 'b6', kind: 'ball-nose', diameter: 6, length: 20 }, { id: 's', kind: 'surfacing-bit', diameter: 25, length: 6 },
    { id: 'd8', kind: 'drill', diameter: 8, length: 60 }
  ] }
  const input = { piece: checkPiece(piece as never, 'piece'), shop: checkShop(shop as never, 'shop').value, readings: [], files: {}, effort: 'preview' as const }
  const work = workOf(input as never)
  const m = machiningOf({ ...work, ...work.stack } as never)!
  console.log(m.operations.map(o => `${o.number} ${o.setting} ${o.kind} ${o.name} ${o.cutter.id} ${o.job.topMm.toFixed(2)}..${o.job.floorMm.toFixed(2)}`).join('\n'))
  console.log(m.notMade)
  const set = programSet(m)
  console.log(set.programs.map(p => `${p.file} ${p.path.moves.length}`).join('\n'), set.notMade)
  const t = performance.now()
  const proved = proveSet(set as never) as any
  console.log((performance.now() - t).toFixed(0))
  for (const p of proved) console.log(p.programs.map((q: any) => q.file + JSON.stringify(q.complaints).slice(0, 300)), JSON.stringify(p.proof, (k, v) => ArrayBuffer.isView(v) ? `[${(v as any).length}]` : v instanceof Map ? [...v] : v).slice(0, 900))
})
