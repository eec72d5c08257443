import { expect, it } from 'vitest'
import { ids, PLAIN } from './harness.ts'

it('a timber most of which is planed off one face is judged, though the other face cannot lose as much', () => {
  const wet = PLAIN.timbers!.map((t, i) => (i === 0 ? { ...t, moisture: 14, rings: 'flat' as const } : t))
  const found = ids({ piece: { ...PLAIN, timbers: wet, flatten: { back: 12, front: 4 } } })
  expect(found).toContain('planed-hollow')
})
