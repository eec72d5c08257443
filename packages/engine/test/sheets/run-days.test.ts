import { describe, expect, it } from 'vitest'
import { daysOf } from '../../src/days.ts'
import { plan } from '../../src/plan.ts'
import { page } from '../../src/sheets/page.ts'
import type { RunSheet } from '../../src/sheets/run-sheet.ts'
import { runSheet } from '../../src/sheets/run-sheet.ts'
import { runSheetHtml } from '../../src/sheets/run-sheet-html.ts'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'
import { exampleInput } from '../calendar/example-work.ts'

const zone = 'Europe/Berlin'
/** The clock of the platform, as a sheet writes it: "Sun 25 Oct 09:05". */
const shown = (ms: number) =>
  new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit'
  })
    .format(ms)
    .replaceAll(',', '')
/** The one moment within a fortnight of another that the platform shows so, by trying every minute. */
function moment(words: string, near: number): number {
  for (let ms = near; ms < near + 14 * 86_400_000; ms += 60_000) if (shown(ms) === words) return ms
  return Number.NaN
}

// Summer time ends at 01:00 UTC on Sunday 25 October 2026 (Directive 2000/84/EC): in the middle of the cure.
const asOf = '2026-10-22T07:00:00+02:00'
const shop = { timeZone: zone }
const despite = ['opaque-cover', 'pour-depth'].map(id => ({ id, because: 'the test says so' }))
const made = (readings: readonly unknown[] = [], at = asOf) => {
  const input = exampleInput('saltmarsh-panel', { shop, readings })
  const days = daysOf(input, { asOf: at, effort: 'quick' })
  return { planned: plan(input, { asOf: at, effort: 'preview', despite }), days }
}
const first = made()
const sheet = runSheet(first.planned, { days: first.days })
const pours = (s: RunSheet) => s.steps.filter(x => x.kind === 'pour' && x.windows !== null)

describe('a run sheet with a calendar', () => {
  const ms = (min: number) => first.days.originMs + Math.round(min) * 60_000

  it('has each pour at the weekday, date and hour of its tasks, by the clock of the platform', () => {
    expect(pours(sheet).length).toBeGreaterThan(1)
    for (const s of pours(sheet)) {
      const tasks = first.days.tasks.filter(
        t => t.task.says.includes(s.title.replace('Pour ', '')) && ['mix', 'pour'].includes(t.task.kind)
      )
      const stir = tasks.find(t => t.task.says.startsWith('Mix'))!
      expect(`${s.day} ${s.when.slice(0, 5)}`, s.title).toBe(shown(ms(stir.startMin)))
      const weighed = tasks.find(t => t.task.says.startsWith('Weigh'))!
      if (weighed.endMin < stir.startMin)
        expect(s.facts[0]).toEqual({ label: 'Weigh', value: shown(ms(weighed.startMin)), unit: '' })
    }
    expect(sheet.clock).toContain(zone)
    expect(sheet.facts.at(-1)).toEqual({
      label: 'Ready',
      value: shown(first.days.readyMs![0]!),
      unit: ''
    })
  })

  it('counts windows in true minutes over the change of the clock, and the next pour lies in its own', () => {
    let over = 0
    for (const s of pours(sheet).slice(1)) {
      const fact = s.facts.find(f => f.label === 'Pour between')!
      const [from, later] = fact.value.split(' and ') as [string, string]
      const to = later.length === 5 ? `${from.slice(0, -5)}${later}` : later
      const before = pours(sheet)[pours(sheet).indexOf(s) - 1]!
      const index = first.planned.work.steps[before.number - 1]!.pour!.index
      const { recoat } = first.days.casts[0]![index]!.windows
      const own = first.days.tasks.filter(t => t.task.step === `pour ${first.planned.plan.pours[index]!.id}`)
      const poured = Math.max(...own.filter(t => t.task.kind === 'pour').map(t => ms(t.endMin)))
      const mixed = own.find(t => t.task.says.startsWith('Mix'))!
      const [opens, closes] = [moment(from, poured), moment(to, poured)]
      expect(Math.abs(opens - poured - recoat.open * 60_000)).toBeLessThanOrEqual(60_000)
      expect(Math.abs(closes - ms(mixed.startMin) - recoat.close! * 60_000)).toBeLessThanOrEqual(60_000)
      const planned = moment(`${s.day} ${s.when.slice(0, 5)}`, poured)
      expect(planned + 30 * 60_000).toBeGreaterThanOrEqual(opens)
      expect(planned).toBeLessThanOrEqual(closes)
      if (poured < Date.parse('2026-10-25T01:00Z') && closes > Date.parse('2026-10-25T01:00Z')) over++
    }
    expect(over).toBeGreaterThan(0)
  })

  it('stands on the page, in HTML and in Markdown, and counts hours without one', () => {
    const [one] = pours(sheet)
    const html = runSheetHtml(first.planned, { days: first.days })
    const md = runSheetMarkdown(first.planned, { days: first.days })
    const whole = page(first.planned, { script: '', style: '', fonts: [], days: first.days })
    for (const text of [html, md, whole]) {
      expect(text).toContain(one!.day)
      expect(text).toContain(one!.when)
    }
    expect(html).toContain('By the clock')
    const without = runSheet(first.planned)
    expect(without.clock).toContain('Times count from')
    expect(pours(without)[0]!.when).toBe('+ 0 min')
    expect(pours(without)[0]!.windows!.head).not.toContain('By the clock')
    expect(runSheet(first.planned, { days: { ...first.days, readyMs: null } })).toEqual(without)
  })

  it('moves with what was recorded: mixed a day later, all that follows is later', () => {
    const [one, two] = pours(sheet)
    const pour = first.planned.plan.pours[first.planned.work.steps[one!.number - 1]!.pour!.index]!.id
    const was = moment(`${one!.day} ${one!.when.slice(0, 5)}`, ms(0))
    const at = new Date(was + 27 * 3_600_000).toISOString().replace('.000', '')
    const later = made([{ id: 'r-00000001', kind: 'mixed', pour, at }], at)
    const again = runSheet(later.planned, { days: later.days })
    const [begun, next] = pours(again)
    expect(`${begun!.day} ${begun!.when.slice(0, 5)}`).toBe(shown(was + 27 * 3_600_000))
    expect(begun!.when).toContain('begun')
    const [a, b] = [two!, next!].map(s => moment(`${s.day} ${s.when.slice(0, 5)}`, ms(0)))
    expect(b! - a!).toBeGreaterThan(0)
  })
})
