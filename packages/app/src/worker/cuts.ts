import { touchOf } from '../../../engine/src/cuts/operation/position.ts'
import { zeroPoints } from '../../../engine/src/cuts/pins/pin-plate.ts'
import { programFilesOf } from '../../../engine/src/cuts-data.ts'
import type { CutFound } from '../../../engine/src/cuts-found.ts'
import type { CutsPlan } from '../../../engine/src/cuts-plan.ts'
import { cutsSteps } from '../../../engine/src/cuts-plan.ts'
import type { Work } from '../../../engine/src/findings/work.ts'
import { unreachedOf } from '../../../engine/src/programs/unreached.ts'
import type { CutMap } from '../../../engine/src/sheets/cover-map.ts'
import { COVER_BANDS, coverMap, offMap } from '../../../engine/src/sheets/cover-map.ts'
import type { Mark, Sheet } from '../../../engine/src/sheets/mark.ts'
import { capital } from '../../../engine/src/sheets/model.ts'
import { settingSheet, settingView } from '../../../engine/src/sheets/setting-sheet.ts'
import { settingSurface } from '../../../engine/src/sheets/setting-surface.ts'
import { onSheet } from '../../../engine/src/sheets/view.ts'
import type { CoverView, CutsView, FoundMark, HandRow, ProgramRow, SettingView } from './cuts-view.ts'
import { drawnOf } from './planned-view.ts'
import type { GoingOn } from './planner.ts'

/** Time of one slice, ms: the worker looks at what else is asked between two. */
const SLICE_MS = 40
/** The drawing of a setting, mm. */
const WIDTH_MM = { wide: 166, narrow: 88 } as const
const HEIGHT_MM = { wide: 84, narrow: 70 } as const

/** Cuts of a piece, made and proved in slices; `stops` are those of the piece itself. */
export function cutsGoingOn(
  seq: number,
  work: Work,
  stops: readonly string[],
  width: 'wide' | 'narrow'
): GoingOn {
  const run = cutsSteps(work)
  return {
    seq,
    slice: async () => {
      const until = performance.now() + SLICE_MS
      for (;;) {
        const next = run.next()
        if (next.done) {
          const view = cutsView(work, next.value, stops, width)
          return { answer: { kind: 'cuts', seq, view, share: 1 }, more: false }
        }
        if (performance.now() > until)
          return { answer: { kind: 'cuts', seq, view: null, share: Math.min(0.99, next.value) }, more: true }
      }
    }
  }
}

function cutsView(
  work: Work,
  cuts: CutsPlan | null,
  stops: readonly string[],
  width: 'wide' | 'narrow'
): CutsView {
  const findings = cuts?.findings ?? []
  const all = [...stops, ...findings.filter(f => f.severity === 'stop').map(f => f.id)]
  return {
    machine: work.shop.machine !== undefined,
    settings:
      cuts === null
        ? []
        : [
            ...settingViews(work, cuts, width, 0),
            ...cuts.plugs.flatMap((p, i) => {
              const before = [cuts, ...cuts.plugs.slice(0, i).map(q => q.cuts)]
              const first = before.reduce((sum, b) => sum + b.found.length, 0)
              return settingViews(p.work, p.cuts, width, first, p.work.piece.name)
            })
          ],
    pins: cuts === null ? [] : pinWords(cuts),
    errorMm: work.shop.machine?.error ?? 0,
    toleranceMm: cuts?.set.machining.pins.toleranceMm ?? 0,
    totals: cuts === null ? null : totals(cuts),
    findings: findings.map(f => ({ id: f.id, severity: f.severity, at: f.at, says: f.says, basis: f.basis })),
    stops: [...new Set(all)],
    files:
      cuts === null || all.length > 0
        ? []
        : [...programFilesOf(cuts, { name: work.piece.name, despite: [] })],
    hand: handRows(work)
  }
}

function settingViews(
  work: Work,
  { set, proofs, found }: CutsPlan,
  width: 'wide' | 'narrow',
  first: number,
  board: string | null = null
): SettingView[] {
  const size = { widthMm: WIDTH_MM[width], mostHeightMm: HEIGHT_MM[width] }
  return set.machining.settings.flatMap((on, i): SettingView[] => {
    const programs = set.programs.filter(p => p.made[0]!.operation.setting === i)
    if (programs.length === 0) return []
    const sheet = settingSheet(work, set, proofs, i, size)
    const { view } = settingView(work, on, size)
    const off = offMap(work, set, proofs, i, size)
    const marks = found.flatMap(({ place }, n): FoundMark[] => {
      if (place?.setting !== i) return []
      const { files, line, lines, x, y } = place
      const spot = x === null || y === null ? null : onSheet(view, x, y)
      const at = spot === null ? null : ([spot[0], sheet.heightMm - spot[1]] as const)
      return [{ finding: first + n, file: files[0]!, line, lines, at }]
    })
    return [
      {
        up: on.setting.up,
        lies: [...(board === null ? [] : [board]), ...programs[0]!.input.setting],
        zero: programs[0]!.input.zero,
        bedMm: on.frame.bedZ,
        ground: drawnOf(settingSurface(work, on, size)).body,
        drawn: drawnOf(sheet),
        cover: coverOf(coverMap(work, set, proofs, i, size), sheet),
        off:
          off === null
            ? null
            : { body: bodyOf(off.marks, sheet), leftMm: off.leftMm, cutAwayMm: off.cutAwayMm },
        marks,
        touch:
          on.position === null
            ? zeroPoints(on.frame, work.stack.geometry.outline)
            : touchOf(on.frame, on.position),
        programs: programs.map((p): ProgramRow => {
          const operations = p.made.map(m => m.operation)
          const own = found.filter(f => f.place?.files.includes(p.file))
          const proof = proofs.find(s => s.programs.some(q => q.file === p.file))
          const left = proof === undefined ? null : unreachedOf(set, proof.programs, proof.proof)
          return {
            file: p.file,
            name: capital(operations.map(o => o.name).join(', ')),
            number: operations[0]!.number,
            cutter: [...new Set(operations.map(o => o.cutter.id))].join(', '),
            depthMm: Math.max(...operations.map(o => o.job.topMm - o.job.floorMm)),
            minutes: p.minutes,
            testMinutes: p.test?.minutes ?? null,
            airMinutes: p.air?.minutes ?? null,
            meets: worst(own),
            unreached: left === null ? null : { mostMm: left.mostMm, says: left.says },
            runs: operations.map(({ cutter, feeds, cutterWhy, limits }) => ({
              cutter: cutter.name,
              rpm: feeds.rpm,
              feedMmMin: feeds.feedMmMin,
              plungeMmMin: feeds.plungeMmMin,
              depthMm: feeds.depthMm,
              stepMm: feeds.stepMm,
              why: [cutterWhy, ...feeds.why, ...limits]
            })),
            passes: p.written.passes.map(x => x.name),
            drawn: drawnOf(settingSheet(work, set, proofs, i, size, p.file)),
            cover: coverOf(coverMap(work, set, proofs, i, size, p.file), sheet)
          }
        })
      }
    ]
  })
}

function bodyOf(marks: readonly Mark[], { widthMm, heightMm }: Sheet): string {
  return drawnOf({ widthMm, heightMm, marks }).body
}

function coverOf(map: CutMap | null, sheet: Sheet): CoverView | null {
  if (map === null) return null
  return {
    body: bodyOf(map.marks, sheet),
    bands: map.bands.map(n => {
      const [fromMm, toMm] = COVER_BANDS[n]!
      return { n: n + 1, fromMm, toMm: Number.isFinite(toMm) ? toMm : null }
    }),
    least: map.least.map(({ over, mm, x, y }) => ({ over, mm, x, y }))
  }
}

function worst(found: readonly CutFound[]): ProgramRow['meets'] {
  return (
    (['stop', 'caution', 'note'] as const)
      .map(severity => {
        const own = found.filter(f => f.finding.severity === severity)
        return own.length === 0 ? null : { severity, says: own[0]!.place!.met, more: own.length - 1 }
      })
      .find(m => m !== null) ?? null
  )
}

function pinWords({ set }: CutsPlan): CutsView['pins'] {
  const { pins } = set.machining
  return pins.pins.map((p, i) => ({
    number: i + 1,
    diameterMm: p.diameterMm,
    x: p.x - pins.datum.x0,
    y: p.y - pins.datum.y0,
    holeMm: p.holeMm,
    slotMm: p.slotMm,
    depthMm: p.depthMm,
    bedMm: p.bedMm,
    pin: p.pin?.name ?? null
  }))
}

function totals({ set }: CutsPlan): CutsView['totals'] {
  const sum = (of: (p: (typeof set.programs)[number]) => number) =>
    set.programs.reduce((a, p) => a + of(p), 0)
  let changes = 0
  let last = ''
  for (const p of set.programs)
    for (const { operation } of p.made) {
      if (operation.cutter.id !== last) changes++
      last = operation.cutter.id
    }
  return {
    cutting: sum(p => p.minutes),
    test: sum(p => p.test?.minutes ?? 0),
    air: sum(p => p.air?.minutes ?? 0),
    changes,
    changing: changes * set.machining.bench.machine.change
  }
}

function handRows(work: Work): HandRow[] {
  return work.hand.map(h => ({
    at: h.at,
    id: capital(h.id),
    face: h.face,
    way: h.way,
    tool: h.doing?.tool ?? null,
    cannot: h.cannot,
    depthMm: h.depthMm,
    offsetMm: h.doing?.offsetMm ?? null,
    leastRadiusMm: h.doing?.leastRadiusMm ?? null,
    passes: h.doing?.passes == null ? null : { count: h.doing.passes.count, eachMm: h.doing.passes.eachMm },
    minutes: h.doing?.minutes ?? null,
    makingMinutes: h.makingMinutes,
    does: h.doing?.does ?? [],
    ways: h.ways
  }))
}
