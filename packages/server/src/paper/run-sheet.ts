import type {
  Drawn,
  Paper,
  RunAmounts,
  RunFinding,
  RunSafety,
  RunSheet,
  RunStep,
  RunTable
} from '@castwright/engine'
import { batchesTitle, factLines, figureColumns, mlWords, scaleWords } from '@castwright/engine'
import { Flow } from './flow.ts'

const KIND = { stop: 'Stop', caution: 'Caution', note: 'Note' } as const
const INDENT = 6
/** Between figures of a line: the dot stays with what it follows. */
const BETWEEN = '\u00a0\u00a0\u00a0·   '

/** The run sheet on paper: what stands, plan and section, then every step with a box to tick. */
export function runSheetPdf(sheet: RunSheet, drawn: Drawn | null, paper: Paper): Uint8Array {
  const despite = sheet.despite.map(d => `despite ${d.id}`).join(', ')
  const foot = `${sheet.name}${despite === '' ? '' : `, gone on ${despite}`}${sheet.written ? '' : ', not written: a stop stands'}`
  const flow = new Flow(paper, foot, { title: `${sheet.name}: run sheet`, asOf: sheet.asOf })
  flow.titled('Run sheet', `planned ${sheet.asOf.slice(0, 10)}`, sheet.name)
  if (sheet.about !== null) flow.say(sheet.about, { tone: 'grey' })
  flow.say(sheet.facts.map(f => `${f.label}: ${f.value}${f.unit === '' ? '' : ` ${f.unit}`}`).join(BETWEEN))
  if (sheet.quantity !== null) flow.say(sheet.quantity)
  flow.say(sheet.verdict, { size: 'row', strong: true })
  if (sheet.preview) flow.say('Heat and cure are coarse; figures may still move.', { lead: 'First pass.' })
  for (const d of sheet.despite)
    flow.besideRule('stop', () => {
      flow.say(d.says, { lead: `Gone on despite ${d.id}.` })
      flow.say(d.because, { lead: 'Because:' })
    })
  if (drawn !== null) {
    flow.gap(2)
    flow.figure(drawn.front, { pictures: drawn.pictures })
    flow.figure(drawn.section, { pictures: drawn.pictures })
  }
  stands(flow, sheet)
  if (sheet.programs !== null) {
    flow.heading('Programs', 24)
    tableOf(flow, sheet.programs, 0)
  }
  if (sheet.written) steps(flow, sheet)
  else notWritten(flow, sheet)
  flow.gap(2)
  flow.say(sheet.closing, { size: 'small', tone: 'grey' })
  return flow.bytes()
}

function stands(flow: Flow, sheet: RunSheet): void {
  const list = sheet.findings.filter(f => f.because === null)
  if (list.length === 0) return
  flow.heading('What stands')
  for (const f of list)
    flow.besideRule(f.kind === 'note' ? 'grey' : f.kind, () => {
      const where = f.step === null || !sheet.written ? f.about : `${f.about}, step ${f.step}`
      flow.say(f.says, { lead: `${KIND[f.kind]} ${f.number}, ${where}.`, afterMm: 0.4 })
      if (f.fix !== null) flow.say(f.fix, { lead: 'Smallest change:', afterMm: 0.4 })
      if (f.settledBy !== null) flow.say(`Settled by ${f.settledBy}.`, { tone: 'grey', afterMm: 0.4 })
      flow.gap(1.4)
    })
}

function steps(flow: Flow, sheet: RunSheet): void {
  flow.heading('Steps')
  flow.say(sheet.clock, { size: 'small', tone: 'grey' })
  let day = ''
  for (const s of sheet.steps) {
    if (s.day !== day && s.day !== '') {
      flow.room(24)
      flow.gap(1.5)
      flow.say(s.day, { size: 'row', slanted: true })
    }
    day = s.day
    step(flow, s)
  }
}

function notWritten(flow: Flow, sheet: RunSheet): void {
  flow.heading('Run sheet not written while a stop stands')
  flow.say(
    `The ${sheet.keptBack} steps are written once what stands is cleared, or gone on despite with a reason.`
  )
  if (sheet.steps.length > 0) {
    flow.heading('Begun already')
    for (const s of sheet.steps) step(flow, s)
  }
  flow.heading('Making safe')
  safety(flow, sheet.makingSafe, 0)
}

function step(flow: Flow, s: RunStep): void {
  // A title does not stand alone at the foot of a page.
  flow.room(s.amounts === null ? 26 : 38)
  flow.gap(1.2)
  flow.tick(`${s.number}   ${s.title}`, { size: 'row', strong: true, afterMm: 0.3 })
  const brief = [s.when, s.face, s.brief].filter(x => x !== '')
  if (brief.length > 0) flow.say(brief.join(BETWEEN), { tone: 'grey', indentMm: INDENT })
  for (const f of s.findings) finding(flow, f)
  if (s.amounts !== null) amounts(flow, s.amounts)
  for (const d of s.does) flow.item(d, { indentMm: INDENT, afterMm: 0.6 })
  for (const line of factLines(s.facts))
    flow.say(line.map(f => `${f.label} ${f.value}${f.unit === '' ? '' : ` ${f.unit}`}`).join(BETWEEN), {
      indentMm: INDENT,
      afterMm: 0.6
    })
  for (const t of [s.sanding, s.table]) if (t !== null) tableOf(flow, t, INDENT)
  if (s.course !== null) flow.figure(s.course.sheet, { indentMm: INDENT })
  if (s.windows !== null) tableOf(flow, s.windows, INDENT)
  if (s.blanks.length > 0) flow.blanks(s.blanks, INDENT)
  safety(flow, s.safety, INDENT)
  flow.gap(1)
}

function finding(flow: Flow, f: RunFinding): void {
  flow.besideRule(
    f.kind === 'note' ? 'grey' : f.kind,
    () => {
      if (f.because === null) flow.say(f.says, { lead: `${KIND[f.kind]} ${f.number}.`, indentMm: INDENT })
      else flow.say(`${f.says} Because: ${f.because}`, { lead: `Gone on despite ${f.id}.`, indentMm: INDENT })
    },
    INDENT
  )
}

function amounts(flow: Flow, a: RunAmounts): void {
  const title = batchesTitle(a)
  const columns = a.shares.length + 1
  flow.table(
    [title, ...a.shares.map(s => s.name), 'Total'],
    [
      ['weigh', ...a.shares.map(s => `${s.words} g`), `${scaleWords(a.totalG, a.places)} g`],
      ['or measure', ...a.shares.map(s => (s.ml === null ? '' : `${mlWords(s.ml)} ml`)), '']
    ],
    [1.2, ...Array<number>(columns).fill(1)],
    { indentMm: INDENT, right: Array.from({ length: columns }, (_, k) => k + 1) }
  )
  const cups =
    a.batches === 1
      ? ''
      : `Tick each: ${Array.from({ length: a.batches }, (_, k) => `[  ] ${k + 1}`).join('   ')}.   `
  flow.say(`${cups}In a ${a.vessel}.`, { indentMm: INDENT })
}

function tableOf(flow: Flow, t: RunTable, indentMm: number): void {
  flow.room(18)
  flow.say(t.title, { strong: true, indentMm, afterMm: 0.5 })
  const right = figureColumns(t).flatMap((figures, k) => (figures ? [k] : []))
  flow.table(t.head, t.rows, flow.widthsOf(t.head, t.rows, 52), { indentMm, right })
}

function safety(flow: Flow, lines: readonly RunSafety[], indentMm: number): void {
  if (lines.length === 0) return
  flow.besideRule(
    'caution',
    () => {
      for (const l of lines)
        flow.say(`${l.line} Gives way to ${l.defersTo.join('; ')}.`, {
          lead: 'Safety.',
          size: 'small',
          indentMm,
          afterMm: 0.6
        })
    },
    indentMm
  )
}
