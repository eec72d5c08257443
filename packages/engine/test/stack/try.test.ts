import { it } from 'vitest'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { orderFaults } from '../../src/steps/fault.ts'
import { stackOf } from './build.ts'
import { seededPiece } from './seeded-piece.ts'

it('try', () => {
  let bad = 0
  let tw = 0,
    tv = 0,
    faults = 0
  for (let s = 0; s < 300; s++) {
    try {
      const t0 = performance.now()
      const st = stackOf(seededPiece(s))
      const t1 = performance.now()
      const v = finishedVolumes(st)
      const t2 = performance.now()
      tw += t1 - t0
      tv += t2 - t1
      faults += orderFaults(st.piece, st.entries, st.steps).length
      if (s < 4) process.stdout.write(JSON.stringify([...v]) + '\n')
    } catch (e) {
      bad++
      if (bad < 12)
        process.stdout.write(`${s} ${(e as Error).message}\n${bad < 3 ? (e as Error).stack : ''}\n`)
    }
  }
  process.stdout.write(`bad ${bad} faults ${faults} build ${tw / 300} volumes ${tv / 300}\n`)
}, 120000)
