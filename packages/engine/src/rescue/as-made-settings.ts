import type { Work } from '../findings/work.ts'
import { decimals } from '../quantity/format.ts'

/** What something was set to, or taken from. */
export interface AsMadeSetting {
  readonly what: string
  readonly says: string
}

/**
 * What a build was set to, to set it so again: cutters with their speeds, bits and bushes of hand work, lots of resin on
 * the shelf, and the room as it was read.
 *
 * Limits: speeds are those the plan asks for; what was dialled at the machine is in the notes, if anywhere.
 */
export function settingsOf(work: Work): AsMadeSetting[] {
  return [...machineSettings(work), ...handSettings(work), ...lots(work), ...room(work)]
}

function machineSettings({ machineCuts }: Work): AsMadeSetting[] {
  return machineCuts.cuts.flatMap(({ id, choice, run }): AsMadeSetting[] =>
    run === null || !('cutter' in choice)
      ? []
      : [
          {
            what: id,
            says: `${choice.cutter.name}, ${decimals(run.rpm, 0)} turns/min, ${decimals(run.feedMmMin, 0)} mm/min, ${decimals(run.depthMm, 1)} mm deep a pass`
          }
        ]
  )
}

function handSettings({ hand }: Work): AsMadeSetting[] {
  return hand.flatMap(({ id, doing }): AsMadeSetting[] =>
    doing === null
      ? []
      : [
          {
            what: id,
            says: `${doing.tool}${doing.passes === null ? '' : `, ${doing.passes.count} pass${doing.passes.count === 1 ? '' : 'es'} of ${decimals(doing.passes.eachMm, 1)} mm`}${doing.offsetMm === null ? '' : `, template offset ${decimals(doing.offsetMm, 1)} mm`}`
          }
        ]
  )
}

function lots({ piece, shop }: Work): AsMadeSetting[] {
  const used = new Set(piece.pours.map(p => p.resin))
  return shop.resins.flatMap((r): AsMadeSetting[] => {
    const named = r.lots.filter(l => l.lot !== undefined)
    if (!used.has(r.id) || named.length === 0) return []
    const says = named.map(l => `${l.lot}${l.part === 'both' ? '' : ` (${l.part})`}`).join(', ')
    return [{ what: `Lots of ${r.id} on the shelf`, says }]
  })
}

function room({ readings }: Work): AsMadeSetting[] {
  const of = (what: string, unit: string, values: readonly number[]): AsMadeSetting[] =>
    values.length === 0
      ? []
      : [
          {
            what,
            says: `${span(values)} ${unit} by ${values.length} reading${values.length === 1 ? '' : 's'}`
          }
        ]
  return [
    ...of(
      'Temperature of the room',
      '°C',
      readings.flatMap(r => (r.kind === 'temperature' && r.pour === undefined ? [r.temperature] : []))
    ),
    ...of(
      'Humidity of the room',
      '%',
      readings.flatMap(r => (r.kind === 'humidity' ? [r.humidity] : []))
    )
  ]
}

function span(values: readonly number[]): string {
  const [low, high] = [Math.min(...values), Math.max(...values)]
  return low === high ? decimals(low, 1) : `${decimals(low, 1)} to ${decimals(high, 1)}`
}
