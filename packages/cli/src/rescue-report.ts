import type { Rescue, Way } from '@castwright/engine'
import { decimals, formatMinutes } from '@castwright/engine'

/** Ways on in words: what happened, what is asked, and each way with what it takes, costs, risks and gives up. */
export function rescueReport(name: string, rescues: readonly Rescue[], kinds: string): string {
  if (rescues.length === 0)
    return `${name}: nothing that was read is past what was planned.\nSay what happened with --what:\n${kinds}`
  return rescues.map((r, i) => one(r, rescues.length > 1 ? `${i + 1}. ` : '')).join('\n')
}

function one(r: Rescue, number: string): string {
  const lines = [`${number}${capital(r.trouble.says)}.`, ...r.refused.map(x => `  not possible: ${x.says}`)]
  const open = r.questions.filter(q => q.answer === null)
  if (r.questions.length > 0) lines.push('', 'What happened?')
  for (const q of r.questions) {
    if (q.answer !== null) {
      lines.push(`  ${q.asks} ${q.answer}`)
      continue
    }
    const form =
      q.free === undefined
        ? q.options.map(o => o.word).join('|')
        : { mm: 'MM', name: 'NAME', point: 'X,Y' }[q.free]
    lines.push(`  ${q.asks}  --answer ${q.key}=${form}`)
    for (const o of q.options) lines.push(`      ${o.word}: ${o.means}`)
  }
  if (open.length === 0 && r.questions.length > 0) lines.push('  (all is answered)')
  lines.push('', r.ways.length === 0 ? 'No way is open.' : 'Ways on, the best first:')
  r.ways.forEach((w, k) => {
    lines.push(...way(w, k + 1))
  })
  const hazards = new Map(r.ways.flatMap(w => w.safety.map(s => [s.name, s] as const)))
  if (hazards.size > 0) lines.push('', 'Safety:')
  for (const [name, s] of hazards)
    lines.push(
      `  ${name}: ${s.line}${s.defersTo.length === 0 ? '' : ` Goes before this: ${s.defersTo.join('; ')}.`}`
    )
  if (r.closed.length > 0) {
    lines.push('', 'Not open:')
    for (const c of r.closed) lines.push(`  ${c.does}: ${c.why}`)
  }
  lines.push('', `Ranked: ${r.rule}.`)
  return `${lines.join('\n')}\n`
}

function way(w: Way, number: number): string[] {
  const { cost } = w
  const after = [
    w.after.stops > 0 ? `${w.after.stops} ${w.after.stops === 1 ? 'stop' : 'stops'}` : '',
    w.after.cautions > 0 ? `${w.after.cautions} ${w.after.cautions === 1 ? 'caution' : 'cautions'}` : ''
  ].filter(x => x !== '')
  return [
    `${number}. ${w.does}${w.favoured === null ? '' : `  (${w.favoured})`}`,
    ...w.how.map(h => `     ${h}`),
    `   ready: ${cost.ready === null ? 'no calendar holds it: see castwright days' : `${cost.ready.replace('T', ' ').slice(0, 16)}${cost.days === null ? '' : ` (${signed(cost.days, 1)} days)`}`}; hands: ${handsMore(cost.handsMin)}; money: ${moneyMore(cost)}${cost.labour === null && cost.handsMin >= 1 ? ', hands not counted: the shop has no rate' : ''}`,
    ...(cost.passed.length === 0 ? [] : [`   besides: ${cost.passed.join('; ')}`]),
    `   chance: ${w.chance} (${w.chanceBasis})${w.gives.length === 0 ? '' : `; gives up: ${w.gives.join('; ')}`}`,
    `   then: ${decimals(w.after.sizeMm[2], 1)} mm thick${after.length === 0 ? ', nothing stands against it' : `, ${after.join(' and ')}`}`,
    ...w.risks.map(f => `   ${f.severity}: ${f.says}`),
    ...(w.safety.length === 0
      ? []
      : [`   safety: ${w.safety.map(s => s.name).join(', ')}; the lines stand below`])
  ]
}

// Where nothing of the difference has a price, nothing is known of it.
function moneyMore({ money, currency, unpriced }: Way['cost']): string {
  if (unpriced > 0 && Math.abs(money) < 0.005) return 'no price known'
  return `${signed(money, 2)} ${currency}${unpriced > 0 ? ` (${unpriced} without a price)` : ''}`
}

function handsMore(min: number): string {
  if (Math.abs(min) < 1) return 'none more'
  return `${formatMinutes(Math.abs(min))} ${min > 0 ? 'more' : 'less'}`
}

function signed(x: number, most: number): string {
  const text = decimals(x, most)
  return x > 0 && text !== '0' ? `+${text}` : text
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1)
}
