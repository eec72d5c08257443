import type { CutFault } from '../cuts/run/feeds.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

const BASIS: Readonly<Record<CutFault['kind'], string>> = {
  'too fast':
    'spindle and marked speed of the shop (EN 847-1: the speed marked on a tool is not exceeded, memory); usual turns by diameter: common practice, no source',
  rubs: 'chips by material and diameter, 0.01 mm the least and 0.02 in resin: common practice, no source',
  pushes:
    'push of a tooth from the energy of cutting (orders of magnitude, memory) and the least pass worth making; what the frame stands: the shop'
}
const DOES: Readonly<Record<CutFault['kind'], string>> = {
  'too fast':
    'it burns, melts resin, and may shed its edges. Take a smaller cutter, or a spindle that turns slower',
  rubs: 'Fewer turns, fewer edges or a faster feed bring the chip up',
  pushes: 'it is pushed off its line. Take a smaller cutter, or a stiffer machine'
}

const ofKind = (work: Work, kind: CutFault['kind']): Found[] => {
  const all = work.machineCuts.cuts.flatMap(c => {
    const fault = c.run?.faults.find(f => f.kind === kind)
    return fault === undefined ? [] : [{ ...c, fault }]
  })
  // One a cutter: the first cut it is for stands for all.
  const first = all.filter((c, i) => all.findIndex(o => cutterOf(o) === cutterOf(c)) === i)
  return first.map(({ at, id, fault }) => ({
    severity: 'caution',
    at,
    says: `${id}: ${fault.says}${kind === 'rubs' ? '. ' : ': '}${DOES[kind]}.`,
    value: fault.value,
    unit: fault.unit,
    limit: fault.limit,
    basis: BASIS[kind]
  }))
}

function cutterOf({ choice }: Work['machineCuts']['cuts'][number]): string | null {
  return 'cutter' in choice ? choice.cutter.id : null
}

/** A spindle that does not turn slowly enough for a wide cutter, or for what is marked on it. */
export const spindleFast: Check = {
  id: 'spindle-fast',
  about: 'a cutter that has to turn slower than the spindle can',
  cases: [],
  run: work => ofKind(work, 'too fast')
}

/** A cutter that cannot be fed fast enough to cut. */
export const cutterRubs: Check = {
  id: 'cutter-rubs',
  about: 'chips thinner than cut: the cutter rubs, burns timber and melts resin',
  cases: [],
  run: work => ofKind(work, 'rubs')
}

/** A cutter that pushes harder than the frame of the machine stands. */
export const cutterPushes: Check = {
  id: 'cutter-pushes',
  about: 'a cutter that pushes the frame of the machine aside even in its lightest pass',
  cases: [],
  run: work => ofKind(work, 'pushes')
}
