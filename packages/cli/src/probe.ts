import type { Plan, WholeCast } from '@castwright/engine'
import { Failure } from './failure.ts'

type Place = readonly [x: number, y: number, z: number]

/** Places that can be asked for at once. */
const MOST = 50

/**
 * Places of thermometers, "x,y,z" in mm (on the plan, and as cast), several parted by semicolons.
 * @throws Failure for what is no such place
 */
export function probesOf(text: string | undefined): Place[] {
  if (text === undefined) return []
  const parts = text.split(';')
  if (parts.length > MOST)
    throw new Failure(`castwright cast --probe: found ${parts.length} places; allowed: up to ${MOST}`)
  return parts.map((part): Place => {
    const numbers = part.split(',').map(word => (word.trim() === '' ? Number.NaN : Number(word)))
    if (numbers.length !== 3 || numbers.some(n => !Number.isFinite(n)))
      throw new Failure(
        `castwright cast --probe: found "${part.trim()}"; allowed: x,y,z in mm, z as cast; for example --probe "0,0,12"`
      )
    return numbers as unknown as Place
  })
}

/** Temperatures at the places asked for, along the run: minutes after the first pour, one column a place. RFC 4180. */
export function probesCsv(probes: WholeCast['probes']): string {
  const head = ['minutes', ...probes.map(p => `"${p.x} ${p.y} ${p.z} mm, °C"`)]
  const rows = (probes[0]?.min ?? []).map((m, i) =>
    [m.toFixed(2), ...probes.map(p => p.tempC[i]?.toFixed(3) ?? '')].join(',')
  )
  return `${[head.join(','), ...rows].join('\r\n')}\r\n`
}

/** The highest temperature of each level of the mould, and where on the plan. RFC 4180. */
export function heightsCsv({ map }: WholeCast): string {
  const rows = ['from_mm,to_mm,highest_C,x_mm,y_mm']
  for (let iz = 0; iz + 1 < map.facesMm.length; iz++) {
    let best = -1
    for (let c = 0; c < map.nx * map.ny; c++) {
      const t = map.peakC[iz * map.nx * map.ny + c]!
      if (!Number.isNaN(t) && (best < 0 || t > map.peakC[iz * map.nx * map.ny + best]!)) best = c
    }
    if (best < 0) continue
    rows.push(
      [
        map.facesMm[iz]!,
        map.facesMm[iz + 1]!,
        map.peakC[iz * map.nx * map.ny + best]!,
        map.x0 + ((best % map.nx) + 0.5) * map.dxMm,
        map.y0 + (Math.floor(best / map.nx) + 0.5) * map.dyMm
      ]
        .map(n => n.toFixed(2))
        .join(',')
    )
  }
  return `${rows.join('\r\n')}\r\n`
}

/** Places asked for that lie off the mould: said, not silently left out. */
export function missed(asked: readonly Place[], whole: WholeCast | null, plan: Plan): string[] {
  const has = (place: Place) =>
    whole?.probes.some(p => p.x === place[0] && p.y === place[1] && p.z === place[2]) ?? false
  return asked
    .filter(p => !has(p))
    .map(p =>
      whole === null
        ? `no thermometer at ${p.join(', ')}: the whole mould of ${plan.name} is not cast`
        : `no thermometer at ${p.join(', ')}: it lies off the mould, or over all that is cast`
    )
}
