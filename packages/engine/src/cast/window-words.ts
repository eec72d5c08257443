const CLASS = 'cure and heat of the resin as the plan takes it, over the corners of rate, room and convection'

/** The reading that would sharpen each window, as something done at the bench. */
export const SETTLED_BY = {
  working: 'the moment at which a stick’s trail first holds (reading: strings)',
  marbling: 'a stick drawn through it: its trail holds but still flows (reading: strings)',
  passes: 'a lamp held low over the face: no more bubbles come up',
  stones: 'one stone in a cup of the same batch; or the moment it strings (reading: strings)',
  tacky: 'a gloved finger: it takes a print but leaves nothing on the glove (reading: tacky)',
  recoat: 'a gloved finger: it takes a print but leaves nothing on the glove (reading: tacky)',
  demould: 'a fingernail on the waste at the rim: no dent (reading: hard)',
  sand: 'fine paper on the waste: dry dust that does not roll (reading: hard)',
  machine: 'a fingernail and a sharp scraper on the waste: no dent, dry dust (reading: hard)',
  service: 'a fingernail on the waste, warmed to the warmest it will meet: no dent'
} as const

/** What the ends of each window follow from. */
export const BASIS = {
  working: `until twice the viscosity at the start: ${CLASS}`,
  marbling: `from 3 to 10 Pa·s (syrup to honey: practice), viscosity good to a factor of two: ${CLASS}`,
  passes: 'the first one to two hours, while it is thinner than honey: common practice, no source',
  stones: `settling of one ball in the thickening resin until it is stuck, in the band the stones are wanted in: ${CLASS}`,
  tacky: `from gel of the surface to a conversion of 0.8 (fitted to practice): ${CLASS}`,
  recoat: `from gel of the surface and no longer warm by 8 K to a conversion of 0.8 (fitted to practice): ${CLASS}`,
  demould: `glass transition 10 K over the room everywhere (fitted to 48-72 h of practice for deep resins): ${CLASS}`,
  sand: `glass transition of the surface 15 K over the room, a day at least (fitted to practice): ${CLASS}`,
  machine: `7 days, 3 at the least: common practice; and glass transition 20 K over the room: ${CLASS}`,
  service: `7 days, 3 at the least: common practice; and glass transition 20 K over the room: ${CLASS}`
} as const
