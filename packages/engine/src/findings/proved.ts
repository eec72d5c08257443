import type { Report, ReportKind } from '../proving/judge/report.ts'
import type { Complaint } from '../proving/read/complaint.ts'
import { decimals } from '../quantity/format.ts'
import type { Finding, Severity } from './finding.ts'

/** What proving says of a kind of fault. */
interface ProvedCheck {
  readonly id: string
  readonly about: string
  readonly severity: Severity
  readonly unit: string | null
  readonly cases: readonly string[]
  readonly says: (r: Report, value: string, limit: string) => string
}

const BASIS =
  'the program as written, read by the rules of RS-274 (NISTIR 6556) and swept over the piece as it stands at that step'

/** Every fault of a program that proving tells, by the kind of its report. */
export const PROVED: Readonly<Record<ReportKind, ProvedCheck>> = {
  'rapid through material': {
    id: 'rapid-in-work',
    about: 'a rapid move through material',
    severity: 'stop',
    unit: 'mm',
    cases: ['C72'],
    says: (_, v) =>
      `goes at rapid speed ${v} mm deep through material: it breaks the cutter and tears the piece off its holding`
  },
  plunge: {
    id: 'straight-down',
    about: 'a cutter that does not cut in its middle goes straight down',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (_, v) =>
      `goes straight down ${v} mm into the work with a cutter that does not cut in its middle: it burns and pushes itself out of its holder. Enter on a ramp, on a helix or from outside`
  },
  'deeper than its edges': {
    id: 'beyond-edges',
    about: 'a cut deeper than the edges of its cutter are long',
    severity: 'caution',
    unit: 'mm',
    cases: [],
    says: (_, v, l) =>
      `has material ${v} mm high beside the cutter, whose edges are ${l} mm long: its shank runs in the cut and rubs`
  },
  'shank rubs': {
    id: 'shank-in-work',
    about: 'a shank thicker than its cutter meets the wall',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (r, v, l) =>
      `brings the shank, thicker than the cutter and ${l} mm above its tip, against ${r.name === '' ? 'material' : `${r.name},`} ${v} mm high`
  },
  'holder rubs': {
    id: 'holder-in-work',
    about: 'the holder of the cutter meets the work',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (r, v, l) =>
      `brings the holder, ${l} mm above the tip, against ${r.name === '' ? 'material' : `${r.name},`} ${v} mm high. Use a cutter that stands farther out`
  },
  stones: {
    id: 'stones-in-path',
    about: 'a program that runs a cutter into stones',
    severity: 'stop',
    unit: 'mm',
    cases: ['C83'],
    says: (r, v) =>
      `runs ${v} mm deep into ${named(r, 'stones')}: they take its edge off or throw it off its line`
  },
  pin: {
    id: 'pin-in-path',
    about: 'a program that runs a cutter into a pin',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (r, v) => `runs ${v} mm deep into ${named(r, 'a pin')}`
  },
  clamp: {
    id: 'clamp-in-path',
    about: 'a program that runs a cutter into a clamp or a place to be kept clear',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (r, v) => `runs ${v} mm deep into ${named(r, 'a clamp')}`
  },
  hardware: {
    id: 'part-in-path',
    about: 'a program that runs a cutter into a part that is cast in',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (r, v) => `runs ${v} mm deep into ${named(r, 'a part that is cast in')}`
  },
  'closed layer': {
    id: 'layer-opened',
    about: 'a program that opens a layer which is to stay closed',
    severity: 'stop',
    unit: 'mm',
    cases: ['O3'],
    says: (r, v) => `opens ${named(r, 'a layer')}, which is to stay closed, ${v} mm deep`
  },
  void: {
    id: 'hollow-opened',
    about: 'a program that breaks into a hollow from the other side',
    severity: 'note',
    unit: 'mm',
    cases: [],
    says: (r, v) => `opens ${named(r, 'a hollow')} from above, ${v} mm past its roof`
  },
  'far face': {
    id: 'out-of-far-face',
    about: 'a program that comes out of the far face where nothing is to come out',
    severity: 'stop',
    unit: 'mm',
    cases: ['C91'],
    says: (_, v) => `comes out of the far face by ${v} mm where the piece is to stay closed`
  },
  bed: {
    id: 'into-bed',
    about: 'a program that cuts deep into what the piece lies on',
    severity: 'stop',
    unit: 'mm',
    cases: ['C72'],
    says: (_, v, l) => `cuts ${v} mm into what the piece lies on; ${l} mm are allowed`
  },
  'outside the machine': {
    id: 'outside-travel',
    about: 'a program that leaves the travel of the machine',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (_, v) => `goes ${v} mm beyond the travel of the machine, with the piece in its middle`
  },
  'too much at once': {
    id: 'too-much-at-once',
    about: 'a program that takes more at once than was reckoned with',
    severity: 'caution',
    unit: 'mm³/min',
    cases: ['C87'],
    says: (_, v, l) =>
      `takes ${v} mm³ a minute at its fullest; ${l} is reckoned with. Shallower passes, or a slower feed`
  },
  'spindle off': {
    id: 'spindle-off',
    about: 'a program that cuts with the spindle off',
    severity: 'stop',
    unit: 'mm',
    cases: [],
    says: (_, v) => `moves ${v} mm deep through material with the spindle off`
  },
  'feed missing': {
    id: 'feed-missing',
    about: 'a program that cuts without a feed',
    severity: 'stop',
    unit: null,
    cases: [],
    says: () => 'cuts before any feed was given: a control stops there, or takes the last one it knew'
  },
  'cutter not measured': {
    id: 'height-unchecked',
    about: 'a cutter that cuts without a height check after its change',
    severity: 'stop',
    unit: null,
    cases: ['C72'],
    says: r =>
      `cuts with cutter ${decimals(r.value, 0)} without a stop to set its height and without a length offset: another cutter stands longer or shorter by millimetres`
  },
  'cutter unknown': {
    id: 'cutter-not-listed',
    about: 'a program with a cutter the shop does not have',
    severity: 'stop',
    unit: null,
    cases: [],
    says: r =>
      r.value === 0
        ? 'moves while no cutter is named: what it takes away cannot be told. Say which is in when the program starts'
        : `asks for cutter ${decimals(r.value, 0)}, which the shop does not list: what it takes away cannot be told`
  },
  'part free': {
    id: 'part-cut-free',
    about: 'a program that cuts the part free of what holds it',
    severity: 'stop',
    unit: 'mm²',
    cases: ['C70'],
    says: (_, v) =>
      `cuts ${v} mm² of the piece free of the waste that holds it: it lifts into the cutter. Leave tabs or a skin`
  },
  'left standing': {
    id: 'left-standing',
    about: 'material that a program leaves where it is to be cut away',
    severity: 'caution',
    unit: 'mm',
    cases: [],
    says: (_, v, l) => `leaves material ${v} mm high where none is wanted; ${l} mm are told apart`
  },
  'cut away': {
    id: 'cut-away',
    about: 'material that a program takes where it is to stand',
    severity: 'stop',
    unit: 'mm',
    cases: ['C74', 'C76'],
    says: (_, v, l) =>
      `takes ${v} mm too much where the piece is to stand; ${l} mm are told apart. The zero, the side, the depth or the cutter is not the one of the plan`
  }
}

function named(r: Report, else_: string): string {
  return r.name === '' ? else_ : r.name
}

/** A report as a finding. `program` is what the program is called; `lineOf` turns a line into words. */
export function provedFinding(
  report: Report,
  at: string,
  program: string,
  lineOf: (line: number) => string
): Finding {
  const check = PROVED[report.kind]
  const figure = (x: number) => decimals(x, Math.abs(x) >= 100 ? 0 : 2)
  const where = report.line > 0 ? `, ${lineOf(report.line)}` : ''
  const more = report.count > 1 && report.line > 0 ? `; ${report.count} moves do` : ''
  // The first move starts at a place that nobody knows.
  const known = [report.x, report.y, report.z].every(Number.isFinite)
  const place = known
    ? `, near X${decimals(report.x, 1)} Y${decimals(report.y, 1)} Z${decimals(report.z, 1)}`
    : ''
  const finite = (x: number) => (Number.isFinite(x) ? Number(x.toPrecision(6)) : null)
  return {
    id: check.id,
    severity: check.severity,
    at,
    says: `${program}${where}${place}, ${check.says(report, figure(report.value), figure(report.limit))}${more}.`,
    value: finite(report.value),
    unit: check.unit,
    band: null,
    limit: finite(report.limit),
    basis: BASIS,
    settledBy: null,
    fix: null,
    fixSays: null,
    cases: check.cases
  }
}

/** A program that the reader cannot follow. */
export const PROGRAM_UNREAD = {
  id: 'program-unread',
  about: 'a program with words that the standard does not allow'
} as const

export function unreadFinding(complaint: Complaint, errors: number, at: string, program: string): Finding {
  return {
    id: PROGRAM_UNREAD.id,
    severity: 'stop',
    at,
    says: `${program}, line ${complaint.line}${complaint.column > 0 ? `, column ${complaint.column}` : ''}: ${complaint.says} Found ${complaint.found}; allowed: ${complaint.allowed}.${errors > 1 ? ` ${errors} such lines.` : ''}`,
    value: errors,
    unit: null,
    band: null,
    limit: 0,
    basis: 'RS274/NGC version 3 (NISTIR 6556)',
    settledBy: null,
    fix: null,
    fixSays: null,
    cases: []
  }
}

/** A cut that no program could be made of. */
export const NOT_MADE = {
  id: 'cut-not-made',
  about: 'a cut by machine that no cutter or no path is found for'
} as const

export function notMadeFinding(at: string, name: string, says: string, largestMm: number | null): Finding {
  return {
    id: NOT_MADE.id,
    severity: 'stop',
    at,
    says: `${name}: no program is made. ${says}${largestMm === null || says.includes('would do') ? '' : `; a cutter of at most ${decimals(largestMm, 2)} mm would do`}.`,
    value: null,
    unit: null,
    band: null,
    limit: largestMm === null ? null : Number(largestMm.toPrecision(6)),
    basis: 'cutters of the shop, else the usual sizes; the shape of the cut',
    settledBy: null,
    fix: null,
    fixSays: null,
    cases: []
  }
}
