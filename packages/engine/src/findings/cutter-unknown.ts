import type { Check } from './finding.ts'

/** A cutter of the shop whose kind is not in the catalogue: no cut takes it. */
export const cutterUnknown: Check = {
  id: 'cutter-unknown',
  about: 'a cutter of the shop of a kind that the catalogue does not have',
  cases: [],
  run: work =>
    work.machineCuts.box.unknown.map(({ index, id, nearest }) => ({
      severity: 'note',
      at: '',
      says: `The shop's cutter ${id} is of a kind that is not in the catalogue, “${work.shop.cutters[index]!.kind}”: no cut takes it. The nearest is ${nearest}.`,
      basis: 'kinds of cutters in the catalogue, by id or name'
    }))
}
