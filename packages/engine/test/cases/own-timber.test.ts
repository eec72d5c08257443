import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne } from './asked.ts'

describe('our own cases: timber and finish', () => {
  const finished = (finish: NonNullable<PieceDocument['finish']>) => ({ piece: { ...PLAIN, finish } })

  it('O10 grit 400 under a flood coat: stop at about 180 to 220', () => {
    const given = finished({ both: { coat: 'flood-coat', grit: 400 } })
    const found = theOne(given, 'grit-too-fine')
    expect(found).toMatchObject({ severity: 'caution', value: 400, limit: 220 })
    expect(found.says).toMatch(/Stop at 180 to 220/)
    expect(asked(mended(given, found.fix!), 'grit-too-fine')).toEqual([])
    expect(asked(finished({ both: { coat: 'flood-coat', grit: 180 } }), 'grit-too-fine')).toEqual([])
  })

  it('O10 a back without any finish cups: finish both alike', () => {
    const given = finished({ front: { coat: 'flood-coat', grit: 220 } })
    const found = theOne(given, 'faces-unlike')
    expect(found).toMatchObject({ severity: 'caution', at: '/finish/back' })
    expect(found.says).toMatch(/the back no finish: .* cups.* Finish both faces alike/)
    expect(asked(mended(given, found.fix!), 'faces-unlike')).toEqual([])
    expect(asked(finished({ both: { coat: 'flood-coat', grit: 220 } }), 'faces-unlike')).toEqual([])
    // Resin alone takes up next to no damp.
    const resin = { ...given.piece, timbers: [] }
    expect(asked({ piece: resin }, 'faces-unlike')).toEqual([])
  })
})
