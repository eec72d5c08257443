// Reading a program of a million lines, beside a bare splitter: lines cut at their ends, words at their spaces, each
// number converted by the language. A second peer walks the same text with no other work than finding numbers by hand.
const LINES = 1_000_000

/** A path over a face: some 33 characters a line, a feed now and then. Invented, for measuring. */
function program() {
  const lines = ['G21 G90 G94 G17', 'T1 M6', 'S18000 M3', 'G0 X0 Y0 Z5', 'G1 Z-1 F600']
  for (let i = 0; i < LINES; i++) {
    const x = (300 * Math.sin(i * 0.001)).toFixed(3)
    const y = (200 * Math.cos(i * 0.0013)).toFixed(3)
    const z = (-3 + 2 * Math.sin(i * 0.01)).toFixed(3)
    lines.push(`G1 X${x} Y${y} Z${z}${i % 50 === 0 ? ' F1200' : ''}`)
  }
  lines.push('M5', 'M2', '')
  // Through bytes and back, as a file comes in: one flat string.
  return Buffer.from(lines.join('\n'), 'latin1').toString('latin1')
}

async function read(calls) {
  const { readProgram } = await import('../packages/engine/dist/src/index.js')
  const text = program()
  let ms = 0
  let note = ''
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    const { motions, complaints } = readProgram(text)
    ms = performance.now() - from
    note = `${motions.count} moves, ${complaints.length} complaints`
  }
  return { ms, note }
}

async function split(calls) {
  const text = program()
  let ms = 0
  let sum = 0
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    sum = 0
    for (const line of text.split('\n')) for (const word of line.split(' ')) sum += Number(word.slice(1))
    ms = performance.now() - from
  }
  return { ms, note: `sum ${sum.toFixed(0)}` }
}

// The least that any reader must do: every character once, every number added up digit by digit.
async function walk(calls) {
  const text = program()
  let ms = 0
  let sum = 0
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    sum = 0
    let whole = 0
    let scale = 0
    let negative = false
    for (let i = 0; i < text.length; i++) {
      const c = text.charCodeAt(i)
      if (c >= 48 && c <= 57) {
        whole = whole * 10 + c - 48
        scale *= 10
      } else if (c === 46) scale = 1
      else if (c === 45) negative = true
      else {
        sum += (negative ? -whole : whole) / (scale > 0 ? scale : 1)
        whole = 0
        scale = 0
        negative = false
      }
    }
    ms = performance.now() - from
  }
  return { ms, note: `sum ${sum.toFixed(0)}` }
}

export const variants = [
  {
    name: 'split',
    about: 'bare line splitter with number parsing, a program of a million lines, third in its process',
    run: () => split(3)
  },
  {
    name: 'walk',
    about: 'the same text walked by character, numbers added up by hand, third in its process',
    run: () => walk(3)
  },
  {
    name: 'read warm',
    about: 'program of a million lines read, third in its process',
    bar: 'at most 2 × splitter',
    peer: 'split',
    run: () => read(3)
  },
  { name: 'split first', about: 'the splitter, first in its process', run: () => split(1) },
  {
    name: 'read first',
    about: 'the program read, first in its process',
    bar: 'at most 2 × splitter',
    peer: 'split first',
    run: () => read(1)
  },
  {
    name: 'read to walk',
    about: 'program of a million lines read, against the walk',
    peer: 'walk',
    run: () => read(3)
  }
]
