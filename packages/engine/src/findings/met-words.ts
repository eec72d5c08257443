import type { Report, ReportKind } from '../proving/judge/report.ts'
import { decimals } from '../quantity/format.ts'

/** What a program meets, in the few words of a cell of a table. Figures as {@link Report} has them. */
export function metWords(report: Report): string {
  const figure = decimals(report.value, Math.abs(report.value) >= 100 ? 0 : 1)
  return MET[report.kind](figure, report.name)
}

const into = (what: string) => (v: string, name: string) => `${v} into ${name === '' ? what : name}`
const against = (what: string) => (_: string, name: string) =>
  `${what} against ${name === '' ? 'the work' : name}`

const MET: Readonly<Record<ReportKind, (value: string, name: string) => string>> = {
  'rapid through material': v => `rapid, ${v} deep in the work`,
  plunge: v => `${v} straight down`,
  'deeper than its edges': v => `${v} high beside its edges`,
  'shank rubs': against('shank'),
  'holder rubs': against('holder'),
  stones: into('stones'),
  pin: into('a pin'),
  clamp: into('a clamp'),
  hardware: into('a part cast in'),
  'closed layer': (v, name) => `opens ${name === '' ? 'a layer' : name}, ${v} deep`,
  void: (_, name) => `into ${name === '' ? 'a hollow' : name}`,
  'far face': v => `${v} out of the far face`,
  bed: v => `${v} into the bed`,
  'outside the machine': v => `${v} beyond the travel`,
  'too much at once': v => `${v} mm³ a minute at once`,
  'spindle off': () => 'spindle off in the work',
  'feed missing': () => 'no feed given',
  'cutter not measured': () => 'height of the cutter unchecked',
  'cutter unknown': () => 'cutter unknown',
  'part free': () => 'the part comes free',
  'left standing': v => `${v} left standing`,
  'cut away': v => `${v} too deep or wide`
}
