import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Surfaces that resin reaches and will not let go of. */
export const noRelease: Check = {
  id: 'no-release',
  about: 'a surface that resin reaches and sticks to for good',
  cases: ['C28'],
  run: work => (work.mould.needsMould ? [...boards(work), ...formers(work)] : [])
}

function boards(work: Work): Found[] {
  const { base, walls, liner } = work.materials
  const held = [...(base.needsRelease ? ['base'] : []), ...(walls.needsRelease ? ['walls'] : [])]
  if (liner.releases || held.length === 0 || !work.piece.pours.some(p => p.kind === 'cast')) return []
  const yesNo = (needs: boolean) => (needs ? 'no' : 'yes')
  return [
    {
      severity: 'stop',
      at: '/mould/liner',
      says: `release on what resin reaches: base (${base.name}) ${yesNo(base.needsRelease)}, walls (${walls.name}) ${yesNo(walls.needsRelease)}. With ${liner.name} the ${held.join(' and ')} become part of the piece: tape, wax or line every face, and the bench under a dam.`,
      basis: `epoxy bonds to this board (catalogue, ${base.confidence}); liners: common practice, no source`,
      settledBy: 'a spoonful of this resin cured on an offcut of the board as it is prepared',
      fix: setValue(work.document, '/mould/liner', 'release-tape'),
      fixSays: 'Line it with release tape'
    }
  ]
}

function formers(work: Work): Found[] {
  return work.entries.formers.flatMap(({ id, at, value }): Found[] =>
    value.released
      ? []
      : [
          {
            severity: 'stop',
            at,
            says: `${id} has no release: resin grips it on all sides and it does not come out of its hole. Wrap it in tape or film, or wax it.`,
            basis:
              'a plug that resin surrounds bonds and is gripped as it shrinks: common practice, no source',
            fix: setValue(work.document, `${at}/released`, true),
            fixSays: `Wrap or wax ${id}`
          }
        ]
  )
}
