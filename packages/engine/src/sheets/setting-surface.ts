import type { MachineSetting } from '../cuts/operation/operation.ts'
import { pointToProgram, regionToProgram } from '../cuts/pins/frame.ts'
import type { Work } from '../findings/work.ts'
import { grainDegOf } from '../piece/grain.ts'
import { difference, intersection } from '../shape/combine.ts'
import type { Region } from '../shape/region.ts'
import type { MaterialDrawing } from './core-model.ts'
import { grainLines } from './grain.ts'
import type { Mark, Sheet } from './mark.ts'
import { coreModelOf } from './model.ts'
import { planParts } from './plan-parts.ts'
import type { SettingSize } from './setting-sheet.ts'
import { HEAD_MM, settingView } from './setting-sheet.ts'
import { regionOnSheet } from './view.ts'

/**
 * The materials of a casting as it lies on the machine: the face that is up in the colours a core gives, as on the
 * plan, and round it the waste, which goes on in the same timber and in the pour that is uppermost there.
 */
export function settingSurface(work: Work, on: MachineSetting, size: SettingSize): Sheet {
  const { frame, setting } = on
  const { view, topMm } = settingView(work, on, size)
  const { geometry } = work.stack
  const model = coreModelOf(work)
  const lay = (plan: Region) => regionOnSheet(view, regionToProgram(frame, plan))
  const paint = (plan: Region, { paint }: Pick<MaterialDrawing, 'paint'>): Mark => ({
    kind: 'region',
    rings: lay(plan),
    paint,
    hatch: null,
    edge: null,
    bleeds: true
  })
  const front = setting.up === 'front'
  const pours = model.pours
  // The last pour stands uppermost where the front is cast upwards.
  const upper = (model.down === 'back') === front ? pours.at(-1) : pours[0]
  const marks: Mark[] = [
    { kind: 'region', rings: lay(geometry.mould), paint: 'paper', hatch: null, edge: null },
    ...(upper === undefined ? [] : [paint(difference(geometry.mould, geometry.outline), upper)])
  ]
  const timbers = geometry.timbers.map(t =>
    intersection((model.down === 'back') === front ? t.upper : t.lower, geometry.mould)
  )
  timbers.forEach((t, i) => {
    marks.push(paint(t, model.timbers[i]!))
  })
  for (const part of planParts(work, model, setting.up)) {
    if (part.top === null || part.colour === null)
      marks.push({
        kind: 'region',
        rings: lay(part.region),
        paint: 'paper',
        hatch: { kind: 'dots' },
        edge: null
      })
    else marks.push(paint(part.region, { paint: part.colour }))
  }
  timbers.forEach((t, i) => {
    const { rings } = work.piece.timbers[i]!
    const grain = grainDegOf(work.piece.timbers[i]!, geometry.timbers[i]!.upper)
    const lying = lay(t)
    if (lying.length > 0)
      marks.push({ kind: 'path', ink: 'grain', lines: grainLines(lying, turned(grain, frame), rings, i + 1) })
  })
  return { widthMm: size.widthMm, heightMm: topMm + HEAD_MM, marks }
}

// A direction of the plan as it lies in the setting.
function turned(deg: number, frame: MachineSetting['frame']): number {
  const a = (deg * Math.PI) / 180
  const at = (x: number, y: number) => pointToProgram(frame, x, y)
  const [x0, y0] = at(0, 0)
  const [x1, y1] = at(Math.cos(a), Math.sin(a))
  return (Math.atan2(y1 - y0, x1 - x0) * 180) / Math.PI
}
