import type { Planned } from '../plan.ts'
import { scaleWords } from '../quantity/format.ts'
import { batchesTitle, mlWords } from './run-mix.ts'
import type { RunAmounts, RunBlank, RunFact, RunTable } from './run-part.ts'
import { factLines } from './run-part.ts'
import type { RunFinding, RunSafety, RunSheet, RunSheetOptions, RunStep } from './run-sheet.ts'
import { runSheet } from './run-sheet.ts'

/**
 * The run sheet as Markdown (CommonMark with the tables and tick boxes of its common extension): one list item
 * with a tick box a step, its safety lines inside it. Words of the piece are escaped: nothing in them becomes
 * a heading, a link, markup of HTML or a column.
 */
export function runSheetMarkdown(planned: Planned, options: RunSheetOptions = {}): string {
  const sheet = runSheet(planned, options)
  const blocks = [
    ...head(sheet),
    ...findings(sheet),
    ...programs(sheet),
    ...steps(sheet),
    `*${words(sheet.closing)}*`
  ]
  return `${blocks.join('\n\n')}\n`
}

/** Words as Markdown that means nothing but the words, on one line. */
export function words(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ')
    .replace(/[\\`*_{}[\]<>|~&#@]/g, c => `\\${c}`)
    .replace(/:\/\//g, ':\\//')
    .replace(/\bwww\./gi, w => `${w.slice(0, 3)}\\.`)
}

/** Words that begin a line: nothing in them makes it a list or a rule either. */
function line(text: string): string {
  return words(text)
    .trim()
    .replace(/^[-+=]/, sign => `\\${sign}`)
    .replace(/^(\d+)([.)])/, (_, number: string, sign: string) => `${number}\\${sign}`)
}

function head(s: RunSheet): string[] {
  const out = [`# Run sheet: ${words(s.name)}`]
  if (s.about !== null) out.push(line(s.about))
  out.push(s.facts.map(factWords).join(' · '))
  if (s.quantity !== null) out.push(`**${words(s.quantity)}**`)
  out.push(`Planned ${s.asOf.slice(0, 10)}. ${words(s.verdict)}`)
  if (s.preview) out.push('**First pass.** Heat and cure are coarse; figures may still move.')
  for (const d of s.despite)
    out.push(`> **Gone on despite ${words(d.id)}.** ${words(d.says)} **Because:** ${words(d.because)}`)
  return out
}

const KIND = { stop: 'Stop', caution: 'Caution', note: 'Note' } as const

function findings(s: RunSheet): string[] {
  const standing = s.findings.filter(f => f.because === null)
  if (standing.length === 0) return []
  return [
    '## What stands',
    standing
      .map(f => {
        const where = f.step === null || !s.written ? words(f.about) : `${words(f.about)}, step ${f.step}`
        return `- **${KIND[f.kind]} ${f.number}** (${where}): ${words(f.says)}${more(f)}`
      })
      .join('\n')
  ]
}

function more(f: RunFinding): string {
  const fix = f.fix === null ? '' : ` Smallest change: ${stopped(words(f.fix))}`
  return `${fix}${f.settledBy === null ? '' : ` Settled by ${stopped(words(f.settledBy))}`}`
}

function stopped(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`
}

function programs({ programs: made }: RunSheet): string[] {
  return made === null ? [] : ['## Programs', `${words(made.title)}:`, table(made)]
}

function steps(s: RunSheet): string[] {
  if (!s.written) return notWritten(s)
  const out = ['## Steps', words(s.clock)]
  let day = ''
  for (const step of s.steps) {
    if (step.day !== day) out.push(`### ${line(step.day)}`)
    day = step.day
    out.push(stepBlock(step))
  }
  return out
}

function notWritten(s: RunSheet): string[] {
  return [
    '## Run sheet not written while a stop stands',
    `The ${s.keptBack} steps are written once what stands is cleared, or gone on despite with a reason.`,
    ...(s.steps.length === 0 ? [] : ['### Begun already', ...s.steps.map(stepBlock)]),
    '### Making safe',
    s.makingSafe.map(l => `> ${safetyWords(l)}`).join('\n>\n')
  ]
}

function stepBlock(s: RunStep): string {
  const side = [s.face, s.when].filter(x => x !== '').map(words)
  const blocks = [`**${s.number}  ${words(s.title)}**${side.length === 0 ? '' : ` · ${side.join(' · ')}`}`]
  if (s.brief !== '') blocks.push(line(s.brief))
  if (s.amounts !== null) blocks.push(...amounts(s.amounts))
  if (s.does.length > 0) blocks.push(s.does.map(d => `- ${line(d)}`).join('\n'))
  // A backslash before the end of a line breaks it (CommonMark).
  if (s.facts.length > 0)
    blocks.push(
      factLines(s.facts)
        .map(l => l.map(factWords).join(' · '))
        .join('\\\n')
    )
  if (s.sanding !== null) blocks.push(`${words(s.sanding.title)}:`, table(s.sanding))
  if (s.table !== null) blocks.push(`${words(s.table.title)}:`, table(s.table))
  if (s.windows !== null) blocks.push(`${words(s.windows.title)}:`, table(s.windows))
  for (const f of s.findings)
    blocks.push(
      f.because === null
        ? `**${KIND[f.kind]} ${f.number}.** ${words(f.says)}`
        : `**Gone on despite ${words(f.id)}.** ${words(f.says)} Because: ${words(f.because)}`
    )
  if (s.safety.length > 0) blocks.push(s.safety.map(l => `> ${safetyWords(l)}`).join('\n>\n'))
  if (s.blanks.length > 0) blocks.push(s.blanks.map(blankWords).join(' · '))
  return `- [ ] ${blocks.join('\n\n').replaceAll('\n', '\n      ').replace(/ +$/gm, '')}`
}

function factWords(f: RunFact): string {
  return `${words(f.label)} **${words(f.value)}**${f.unit === '' ? '' : ` ${words(f.unit)}`}`
}

function blankWords(b: RunBlank): string {
  return `${words(b.label)}${b.planned === null ? '' : ` (plan ${words(b.planned)})`} \\_\\_\\_\\_\\_\\_ ${words(b.unit)}`
}

function safetyWords(l: RunSafety): string {
  return `**Safety.** ${words(l.line)} *Gives way to ${words(l.defersTo.join('; '))}.*`
}

function amounts(a: RunAmounts): string[] {
  const weigh = (g: string) => `**${g} g**`
  const title = batchesTitle(a)
  const out = [
    table(
      {
        title: '',
        head: [title, ...a.shares.map(s => s.name), 'Total'],
        rows: [
          ['weigh', ...a.shares.map(s => weigh(s.words)), weigh(scaleWords(a.totalG, a.places))],
          ['or measure', ...a.shares.map(s => (s.ml === null ? '' : `${mlWords(s.ml)} ml`)), '']
        ]
      },
      true
    ),
    `In a ${words(a.vessel)}.`
  ]
  if (a.batches > 1)
    out.push(`Batches: ${Array.from({ length: a.batches }, (_, k) => `☐ ${k + 1}`).join('  ')}`)
  return out
}

// A table; rows that are Markdown already are not escaped again.
function table(t: RunTable, rowsDone = false): string {
  const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`
  return [
    row(t.head.map(words)),
    row(t.head.map((_, i) => (i === 0 ? '---' : '---:'))),
    ...t.rows.map(r => row(rowsDone ? r : r.map(words)))
  ].join('\n')
}
