import type { ResinChoice } from '../piece/resin-choice.ts'
import { decimals, formatMass } from '../quantity/format.ts'
import type { Use } from './shelf.ts'

/** What a line of the buy list is of. */
export type BuyGroup = 'resin' | 'colour' | 'stones' | 'timber' | 'mould' | 'finish' | 'hardware'
/** What it is counted in. */
export type BuyUnit = 'g' | 'ml' | 'm' | 'm²' | 'piece'

/** Something that has to be at hand, before shelf and packs are looked at. */
export interface Need {
  readonly group: BuyGroup
  /** Id of the catalogue or the shop, by which the shop's prices are found. */
  readonly item: string
  /** What it is called. */
  readonly name: string
  readonly unit: BuyUnit
  /** What the plan uses, by the day it is used on; wastage of the vessels included. */
  readonly uses: readonly Use[]
  /** Bought beyond it, %. */
  readonly spare: number
  readonly note: string
  /** The resin, of which both parts are bought in their ratio; null of anything else. */
  readonly resin: ResinChoice | null
}

/** All that is used of a need. */
export function amountOf(need: Pick<Need, 'uses'>): number {
  return need.uses.reduce((sum, u) => sum + u.amount, 0)
}

/** Uses with the spare share on each. */
export function withSpare(need: Pick<Need, 'uses' | 'spare'>): Use[] {
  return need.uses.map(u => ({ ...u, amount: u.amount * (1 + need.spare / 100) }))
}

/** Rounded up to what a person buys or weighs. */
export function roundedUp(x: number, unit: BuyUnit): number {
  const steps = unit === 'm' || unit === 'm²' ? 100 : 1
  return Math.ceil(x * steps - 1e-6) / steps
}

/** An amount of the buy list in words: "1.5 kg", "375 ml", "3". */
export function amountWords(x: number, unit: BuyUnit): string {
  if (unit === 'g') return formatMass(x)
  if (unit === 'piece') return decimals(x, 0)
  return `${decimals(x, unit === 'ml' ? 0 : 2)} ${unit}`
}
