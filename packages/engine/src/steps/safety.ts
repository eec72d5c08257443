import type { BoardRecord } from '../catalogue/board.ts'
import type { CoatRecord } from '../catalogue/coat.ts'
import { find } from '../catalogue/find.ts'
import type { HardwareRecord } from '../catalogue/hardware-record.ts'
import type { HazardRecord } from '../catalogue/safety.ts'
import type { Step, StepKind } from './step.ts'

/** What the table of hazards needs to know of the materials. */
export interface HazardFacts {
  readonly hardware: readonly HardwareRecord[]
  readonly coats: { readonly front: CoatRecord | null; readonly back: CoatRecord | null }
  /** Of each pour and of each marking's filling. */
  readonly resins: readonly { readonly record: { readonly family: string } }[]
  readonly markingResins: readonly { readonly record: { readonly family: string } }[]
  readonly base: BoardRecord
}

/** What of the piece itself brings a hazard. */
export interface HazardPiece {
  /** Mass to lift at the step, g: the casting as it is then, with its waste and, out of it, its mould. */
  readonly massG: number
  readonly food: boolean
  /** No machine in the shop: faces are flattened with a router on a sled. */
  readonly byHand: boolean
  /** Timber is in the piece: what is sanded throws its dust too. */
  readonly timber: boolean
  /** What is sanded at this step; wet; between coats. */
  readonly sanding: { readonly sands: boolean; readonly wet: boolean; readonly between: boolean }
}

/** What a family of resin brings beyond mixing. */
const FAMILY_HAZARD: Readonly<Record<string, string>> = {
  polyester: 'peroxide-catalyst',
  polyurethane: 'isocyanate'
}

/** From this mass on a lift wants a second pair of hands, g: 25 kg (common guidance of health agencies for one person; memory). */
export const HEAVY_G = 25_000

/** Hazards of each kind of step. A step that is not listed has none of its own; a test holds the list complete. */
export const HAZARDS_OF: Readonly<Record<StepKind, readonly string[]>> = {
  'prepare timber': ['sanding-timber', 'sawing'],
  'make mould': ['sawing'],
  'set timber': [],
  pour: ['mixing-resin', 'pouring', 'leftover-in-cup'],
  'set stones': ['mixing-resin'],
  wait: ['hot-piece'],
  demould: ['hot-piece'],
  'turn over': [],
  'drill pins': ['drilling'],
  flatten: ['sanding-cured-resin'],
  cut: [],
  mark: [],
  fill: ['mixing-resin', 'leftover-in-cup'],
  sand: ['sanding-cured-resin'],
  trim: ['sawing', 'router-by-hand', 'sanding-cured-resin'],
  'work edges': ['router-by-hand', 'sanding-cured-resin'],
  coat: [],
  fit: [],
  deliver: []
}

const WAY_HAZARD = {
  machine: 'machine-cutting',
  router: 'router-by-hand',
  drill: 'drilling',
  saw: 'sawing',
  sled: 'router-by-hand',
  'sent out': null
} as const

/** The safety lines that bite at a step. */
export function safetyOf(step: Step, facts: HazardFacts, piece: HazardPiece): HazardRecord[] {
  const ids = new Set(HAZARDS_OF[step.kind])
  if (step.kind === 'wait' && step.why !== 'recoat' && step.why !== 'demould') ids.delete('hot-piece')
  const way = step.cut?.value.way ?? step.marking?.value.way
  if ((step.kind === 'cut' || step.kind === 'mark') && way !== undefined) {
    const hazard = WAY_HAZARD[way]
    if (hazard !== null) ids.add(hazard)
    ids.add('sanding-cured-resin')
  }
  if (step.kind === 'flatten') ids.add(piece.byHand ? 'router-by-hand' : 'machine-cutting')
  const { sands, wet, between } = piece.sanding
  if (sands) ids.add('sanding-cured-resin')
  if (piece.timber && (sands || ['flatten', 'sand', 'trim', 'work edges'].includes(step.kind)))
    ids.add('sanding-timber')
  if (wet) ids.add('wet-sanding')
  if (between) ids.add('sanding-finish')
  if (['demould', 'turn over', 'trim', 'deliver'].includes(step.kind) && piece.massG >= HEAVY_G)
    ids.add('heavy-lift')
  if (step.kind === 'demould' && facts.base.material === 'glass') ids.add('glass-mould')
  if ((step.kind === 'deliver' || step.kind === 'coat') && piece.food) ids.add('food-side')
  if (step.timber !== undefined && step.kind === 'prepare timber' && step.timber.value.charred > 0)
    ids.add('charring')
  const mixed =
    step.kind === 'pour' && step.pour !== undefined
      ? facts.resins[step.pour.index]
      : step.kind === 'fill' && step.marking !== undefined
        ? facts.markingResins[step.marking.index]
        : undefined
  const family = mixed === undefined ? undefined : FAMILY_HAZARD[mixed.record.family]
  if (family !== undefined) ids.add(family)
  if (step.kind === 'coat') {
    const coats =
      step.face === 'both'
        ? [facts.coats.front, facts.coats.back]
        : [facts.coats[step.face as 'front' | 'back']]
    for (const coat of coats) {
      if (coat === null) continue
      if (coat.way === 'spray') ids.add('spray')
      if (coat.kind === 'penetrating') ids.add('oily-rags')
      // What comes without a solvent is mixed of two parts: flood and seal coats of epoxy.
      if (coat.carrier === 'none') ids.add('mixing-resin').add('leftover-in-cup')
      if (coat.carrier !== 'none' && coat.carrier !== 'water') ids.add('finish-vapour')
    }
  }
  if (step.kind === 'fit' && step.hardware !== undefined) {
    const record = facts.hardware[step.hardware.index]!
    if (record.mains) ids.add('mains-wiring')
    // A coin cell swallowed is as bad as two magnets.
    if (record.magnetic || record.id === 'coin-cell-holder') ids.add('magnets-swallow')
  }
  return [...ids].map(id => {
    const row = find('hazard', id)
    if (row === null) throw new Error(`no safety line "${id}"`)
    return row
  })
}
