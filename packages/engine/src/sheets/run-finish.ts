import type { CoatRecord } from '../catalogue/coat.ts'
import type { Work } from '../findings/work.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { decimals, formatMass, formatVolume } from '../quantity/format.ts'
import { shortName } from '../quantity/short-name.ts'
import type { Step } from '../steps/step.ts'
import { bowFacts } from './bow-words.ts'
import { capital } from './model.ts'
import { coatFacts, coatTable, floodFacts, foodWords } from './run-coat.ts'
import { gapFacts, maskWords, tightWords } from './run-fit.ts'
import { mlWords } from './run-mix.ts'
import type { RunDetail, RunFact } from './run-part.ts'
import { blank, detail, fact, newLine } from './run-part.ts'
import { useFacts } from './use-words.ts'

const COAT_WAY = {
  brush: 'brushed on',
  wipe: 'wiped on',
  pad: 'laid on with a pad',
  spray: 'sprayed',
  pour: 'poured'
} as const

/** The coats of a face or of both. */
export function coatDetail(plan: Plan, work: Work, step: Step): RunDetail {
  const L = lengthsOf(work.shop)
  const { blanks } = plan.quantity
  const faces = work.faces.filter(f => f.coat !== null && (step.face === 'both' || step.face === f.face))
  const [front, back] = faces
  // Faces coated alike are said once.
  const alike =
    front !== undefined &&
    back !== undefined &&
    front.coat!.id === back.coat!.id &&
    front.coats === back.coats &&
    front.grit === back.grit
  const does: string[] = maskWords(work, step.face ?? 'both')
  const facts: RunFact[] = []
  for (const f of alike ? [front] : faces) {
    const name = alike ? 'Each face' : capital(f.face)
    const coat = f.coat!
    does.push(
      `${name}: ${f.coats} coat${f.coats === 1 ? '' : 's'} of ${shortName(coat.name)}, ${COAT_WAY[coat.way]}${f.grit === null ? '' : `, after P${f.grit}`}.`
    )
    facts.push(
      newLine(
        fact(
          `${name}, ${f.coats === 1 ? 'its coat' : 'each coat'}`,
          mlWords(f.needMl / Math.max(1, f.coats)),
          'ml'
        )
      ),
      ...(blanks > 1 ? [fact(`${name}, all ${blanks} blanks`, formatVolume(f.needMl * blanks))] : []),
      fact(
        'Film when dry',
        decimals(1000 * f.filmMm[1], 0),
        `µm; ${decimals(1000 * f.filmMm[0], 0)} to ${decimals(1000 * f.filmMm[2], 0)}`
      ),
      ...coatFacts(f, name),
      ...f.floods.flatMap(flood => (flood.pour === null ? floodFacts(flood, L) : []))
    )
  }
  const food = faces.filter(f => f.food).map(f => f.face)
  if (food.length > 0) does.push(foodWords(food))
  // One coat has no next.
  const coats = [...new Set(faces.filter(f => f.coats > 1).map(f => f.coat!))]
  for (const coat of coats) does.push(coatWords(coat, new Set(faces.map(f => f.coat)).size > 1))
  const most = Math.max(0, ...faces.map(f => f.coats))
  return detail({
    does,
    facts,
    table: coatTable((alike ? [front] : faces).map(f => [alike ? 'Each face' : capital(f.face), f])),
    blanks: Array.from({ length: Math.min(4, most) }, (_, k) => blank(`Coat ${k + 1} at`, 'day, h:min'))
  })
}

function coatWords(coat: CoatRecord, named: boolean): string {
  const [from, to] = coat.recoatH
  const next = `Next coat${named ? ` of ${shortName(coat.name)}` : ''} after ${decimals(from, 1)} h${to === null ? '' : `, before ${decimals(to, 1)} h`}`
  const between =
    coat.betweenGrit === null ? '' : `; P${coat.betweenGrit[0]} to P${coat.betweenGrit[1]} between coats`
  const late = to === null || coat.late === 'nothing' ? '' : `; later than that, ${coat.late} first`
  return `${next}${between}${late}.`
}

/** A bought-in part and its hole. */
export function fitDetail(plan: Plan, work: Work, k: number): RunDetail {
  const L = lengthsOf(work.shop)
  const own = plan.hardware[k]!
  const fit = work.fits[k]!
  const facts = []
  if (own.count > 1) facts.push(fact('How many', String(own.count)))
  if (fit.part !== null)
    facts.push(
      fact(
        'Part reckoned with',
        fit.part.shape === 'round'
          ? `Ø ${L.of(fit.part.widthMm, 1)} × ${L.of(fit.part.depthMm, 1)}`
          : `${L.of(fit.part.lengthMm, 1)} × ${L.of(fit.part.widthMm, 1)} × ${L.of(fit.part.depthMm, 1)}`,
        L.unit
      )
    )
  if (fit.holeDepthMm !== null)
    facts.push(
      fact('Its hole', L.of(fit.chain?.depthMm?.[1] ?? fit.holeDepthMm, 1, 1), `${L.unit} deep in the end`)
    )
  if (fit.shaft !== null)
    facts.push(
      fact(
        'Thread',
        L.of(fit.shaft.hasMm, 1),
        `${L.unit}; it passes ${L.of(fit.shaft.passesMm, 1)} and needs ${L.of(fit.shaft.needsMm, 1)}`
      )
    )
  facts.push(...gapFacts(plan, work, k))
  return detail({
    does: [`Try it dry first, from the ${work.piece.hardware[k]!.face}.`, ...tightWords(work, k)],
    facts
  })
}

/** What leaves the shop. */
export function deliverDetail(plan: Plan, work: Work): RunDetail {
  const L = lengthsOf(work.shop)
  const { sizeMm, massG } = plan.totals
  const { piece } = work
  const last = work.steps.length - 1
  return detail({
    does:
      piece.food === 'none'
        ? []
        : [
            `It meets food on ${piece.food === 'both' ? 'both faces' : `the ${piece.food}`}: say with what it was made.`
          ],
    facts: [
      fact('Size', sizeMm.map(x => L.of(x, 1)).join(' × '), L.unit),
      fact('Mass, bare', formatMass(massG)),
      ...bowFacts(work, last, 'Bows in the driest air', 'driest'),
      ...bowFacts(work, last, 'In the dampest', 'dampest'),
      ...useFacts(work)
    ],
    blanks: [
      blank('Thickness', L.unit, L.of(sizeMm[2], 1, 1)),
      blank('Mass', massG >= 10_000 ? 'kg' : 'g', formatMass(massG).split(' ')[0]!)
    ]
  })
}
