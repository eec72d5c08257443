/** A carved sign: two hollows cut with the hand router, each filled in a colour of its own, oiled. Invented. */
export const SIGN = {
  castwright: 1,
  name: 'Carved sign',
  outline: { rectangle: [600, 240], corner: 6 },
  flatten: { front: 0.5, back: 0.5 },
  timbers: [
    { id: 'board', species: 'oak-white', outline: { rectangle: [600, 240] }, thickness: 26, moisture: 9 }
  ],
  pours: [
    {
      id: 'green',
      kind: 'inlay',
      into: ['left'],
      resin: 'medium',
      fill: 'cut',
      tint: [{ pigment: 'green-paste', percent: 2 }]
    },
    {
      id: 'white',
      kind: 'inlay',
      into: ['right'],
      resin: 'medium',
      fill: 'cut',
      tint: [{ pigment: 'white-paste', percent: 3 }]
    }
  ],
  cuts: [
    {
      id: 'left',
      face: 'front',
      shape: { rectangle: [160, 120], at: [-160, 0], corner: 12 },
      depth: 6,
      way: 'router'
    },
    {
      id: 'right',
      face: 'front',
      shape: { rectangle: [160, 120], at: [160, 0], corner: 12 },
      depth: 6,
      way: 'router'
    }
  ],
  finish: { both: { coat: 'hardwax-oil', coats: 2, grit: 240 } }
}

/** Somebody who is at the bench on Saturdays and Sundays. */
export const WEEKENDS = {
  castwright: 1,
  timeZone: 'Europe/Berlin',
  hours: {
    mon: [],
    tue: [],
    wed: [],
    thu: [],
    fri: [],
    sat: ['09:00-19:00'],
    sun: ['09:00-19:00']
  }
}
