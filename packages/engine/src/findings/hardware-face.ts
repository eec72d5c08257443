import type { Check } from './finding.ts'

/** A part that goes in from one face, and a cut for it that opens on the other. */
export const hardwareFace: Check = {
  id: 'hardware-face',
  about: 'a part that goes in from the face its cut does not open on',
  cases: [],
  run: work =>
    work.entries.hardware.flatMap(({ id, at, value }) => {
      const cut = work.entries.cuts.find(c => c.id === value.in)
      if (cut === undefined || cut.value.through === true || cut.value.face === value.face) return []
      return [
        {
          severity: 'caution' as const,
          at,
          says: `${id} goes in from the ${value.face}, but ${cut.id} opens on the ${cut.value.face}. Is the cut on the wrong face, or the part? Seen from the front, a part that is to stay hidden opens on the back.`,
          basis:
            'the face of the part and the face of its cut, as the piece gives them; parts go in from the back when it does not say'
        }
      ]
    })
}
