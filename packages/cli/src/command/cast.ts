import type { Plan } from '@castwright/engine'
import { fullPlan } from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { castCsv, castReport } from '../cast-report.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { writeFolder } from '../out-folder.ts'
import { heightsCsv, missed, probesCsv, probesOf } from '../probe.ts'
import { progressLine } from '../progress.ts'
import type { Command } from './command.ts'

/** `castwright cast`: how each pour cures and heats. */
export const castCommand: Command = {
  name: 'cast',
  about: 'how each pour cures and heats: temperatures and the spans of time in which each step works',
  help: `castwright cast PIECE [--json] [--quick] [--out DIR] [--probe PLACES] [--shop FILE] [--readings FILE] [--as-of MOMENT]

Casts the whole mould in three directions: how hot each pour gets and when, how far its limits are, until when
it can be worked, when the next pour bonds, when it leaves the mould. Ends with 0 when no stop stands, 1 when one does, 2 when the input cannot be used.

  --json            as JSON, with the curves
  --quick           on a coarse grid: a first look
  --out DIR         writes cast.json, cast.csv (the curves) and heights.csv (the hottest of each level) there
  --probe PLACES    thermometers at "x,y,z; x,y,z" in mm, z as cast: their courses in cast.json and probes.csv
  --shop FILE       your own facts; left out: shop.json beside the piece, else the built-in shop
  --readings FILE   what was measured; left out: NAME.readings.jsonl beside NAME.piece.json, if there
  --as-of MOMENT    what counts as now
`,
  run: args => {
    const given = argumentsOf('cast', args, {
      flags: ['json', 'quick'],
      texts: ['out', 'probe', 'shop', 'readings', 'as-of'],
      words: [1, 1, 'one piece file']
    })
    if (given.flags.has('help')) return { out: castCommand.help, code: 0 }
    const places = probesOf(given.texts.get('probe'))
    const asOf = momentOf(given.texts.get('as-of'))
    const { input, says: said } = load({
      piece: given.words[0]!,
      shop: given.texts.get('shop'),
      readings: given.texts.get('readings')
    })
    const says = [...said]
    const line = progressLine('casting the whole mould')
    const effort = given.flags.has('quick') ? 'preview' : 'full'
    const { plan: planned, work } = fullPlan(input, { asOf, effort }, line.on, places)
    line.end()
    says.push(...missed(places, work.whole, planned))
    const probes = work.whole?.probes ?? []
    const json = `${JSON.stringify({ ...castData(planned), probes }, null, 2)}\n`
    const folder = given.texts.get('out')
    let written = ''
    if (folder !== undefined) {
      const names = writeFolder(
        folder,
        new Map([
          ['cast.json', json],
          ['cast.csv', castCsv(planned)],
          ...(work.whole === null ? [] : [['heights.csv', heightsCsv(work.whole)] as const]),
          ...(probes.length === 0 ? [] : [['probes.csv', probesCsv(probes)] as const])
        ])
      )
      written = `written to ${folder}: ${names.join(', ')}\n`
    }
    return {
      out: given.flags.has('json') ? json : castReport(planned),
      err: says.map(s => `${s}\n`).join('') + written,
      code: planned.verdict === 'stop' ? 1 : 0
    }
  }
}

/** Times in minutes since the pour, temperatures in °C, viscosity in Pa·s; null: not predicted. */
function castData(planned: Plan) {
  return {
    castwright: 1,
    name: planned.name,
    asOf: planned.asOf,
    verdict: planned.verdict,
    whole: planned.whole,
    findings: planned.findings.filter(f => f.at.startsWith('/pours')),
    pours: planned.pours.map(p => ({
      id: p.id,
      kind: p.kind,
      resin: p.resin,
      pouredDepthMm: p.stack.liquidDepth,
      cast: p.cast,
      edge: p.edge,
      batches: p.batches
    }))
  }
}
