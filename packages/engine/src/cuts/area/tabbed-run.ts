import type { CutJob } from '../cut-job.ts'
import type { PathPen } from '../toolpath.ts'
import type { Track } from './track.ts'
import { runAlong, stretch } from './track.ts'

/** Tabs on a track: over `fromMm`..`toMm` of each the cutter stays at `topMm` or higher. */
export interface Tabs {
  readonly topMm: number
  readonly spans: readonly { readonly fromMm: number; readonly toMm: number }[]
}

/** A way down from `startMm` to `floorMm` over `rampMm` of the track, then level to `endMm`; z by length. */
export interface Descent {
  readonly startMm: number
  readonly floorMm: number
  readonly rampMm: number
  /** Where along the track it begins. */
  readonly fromMm: number
  readonly endMm: number
}

/** Steepest way down beside a tab: of a cutter whose edges meet in its middle, degrees (practice). */
const BESIDE_DEG = 45

/**
 * Runs along a closed track by a descent, lifted over tabs: straight up where a tab begins, down again on a slope
 * where it ends, so that the cutter is never pushed straight down. The pen stands where it begins.
 */
export function tabbedRun(
  pen: PathPen,
  job: CutJob,
  track: Track,
  descent: Descent,
  tabs: Tabs | null
): void {
  const { feeds, cutter } = job
  const slope = Math.tan(
    (Math.min(89, cutter.plunges ? Math.max(BESIDE_DEG, feeds.rampDeg) : feeds.rampDeg) * Math.PI) / 180
  )
  const base = (s: number) =>
    descent.rampMm > 0 && s < descent.rampMm
      ? descent.startMm + ((descent.floorMm - descent.startMm) * s) / descent.rampMm
      : descent.floorMm
  let at = descent.fromMm
  // On from where the pen is to a length of the track, evenly to a height.
  const run = (to: number, z: number) => {
    if (to - at <= 1e-9) return
    const down = pen.z - z
    const steep = down / (to - at)
    const feed =
      down <= 1e-9
        ? feeds.feedMmMin
        : steep > Math.tan((feeds.rampDeg * Math.PI) / 180) + 1e-6
          ? feeds.plungeMmMin
          : feeds.rampMmMin
    runAlong(pen, stretch(track, at, to), z, feed)
    at = to
  }
  // Along the descent itself, which bends once.
  const follow = (to: number) => {
    if (at < descent.rampMm && to > descent.rampMm) run(descent.rampMm, base(descent.rampMm))
    run(to, base(to))
  }
  for (const { fromMm, toMm } of tabs === null ? [] : occurrences(tabs, track.lengthMm, descent.endMm)) {
    const top = tabs!.topMm
    if (toMm <= at || base(toMm) >= top) continue
    // On the ramp it may come down to the height of the tab only upon it.
    const from =
      base(fromMm) >= top
        ? (descent.rampMm * (descent.startMm - top)) / (descent.startMm - descent.floorMm)
        : fromMm
    // Two tabs so near that the slope of one has not ended: stay up.
    follow(Math.max(at, from))
    if (pen.z < top) pen.line(pen.x, pen.y, top, feeds.feedMmMin)
    run(toMm, top)
    const next = toMm + (top - base(toMm)) / slope
    // The descent may still fall while the slope runs: it meets it a little later.
    const meet = next < descent.rampMm ? meeting(base, top, toMm, slope, descent.rampMm) : next
    run(
      Math.min(meet, descent.endMm),
      Math.max(base(meet), top - slope * (Math.min(meet, descent.endMm) - toMm))
    )
  }
  follow(descent.endMm)
}

// The tabs of every time round, in order, until the end.
function occurrences(tabs: Tabs, roundMm: number, endMm: number): { fromMm: number; toMm: number }[] {
  const out: { fromMm: number; toMm: number }[] = []
  for (let from = 0; from < endMm; from += roundMm)
    for (const span of tabs.spans)
      if (span.fromMm + from < endMm)
        out.push({ fromMm: span.fromMm + from, toMm: Math.min(endMm, span.toMm + from) })
  return out
}

function meeting(
  base: (s: number) => number,
  top: number,
  toMm: number,
  slope: number,
  rampMm: number
): number {
  let low = toMm
  let high = rampMm + (top - base(rampMm)) / slope
  for (let k = 0; k < 50; k++) {
    const mid = (low + high) / 2
    if (top - slope * (mid - toMm) > base(mid)) low = mid
    else high = mid
  }
  return (low + high) / 2
}
