const many = (n: number, one: string, more: string) => `${n} ${n === 1 ? one : more}`

const DRAWN = {
  ways: 'the ways of the cutters',
  cover: 'a map of what the cuts leave over the next layer or hollow; the list below says the least of each',
  off: 'a map of what is left standing and what is cut away'
} as const

// The first ranges of lines, so many of them.
function lineWords(lines: readonly (readonly [number, number])[], most: number): string {
  const ranges = lines.slice(0, most).map(([a, b]) => (a === b ? `${a}` : `${a} to ${b}`))
  if (ranges.length === 0) return ''
  const one = lines.length === 1 && lines[0]![0] === lines[0]![1]
  return `${one ? 'line' : 'lines'} ${ranges.join(', ')}${lines.length > most ? ' and more' : ''}`
}

/** Words of the Cuts screen (English). */
export const cutsWords = {
  region: 'Cuts',
  making: (percent: number) => `making and proving programs, ${percent} %`,
  proved: (n: number) => `${many(n, 'program', 'programs')} proved over the piece at 0.2 mm`,
  face: { back: 'Back up', front: 'Front up' },
  drawn: (face: string, shows: 'ways' | 'cover' | 'off') =>
    `The piece as it lies, ${face}, seen from above, with ${DRAWN[shows]}`,
  shownHead: 'Drawings show',
  shown: {
    ways: 'ways of the cutters',
    cover: 'cover left under the cuts',
    off: 'left standing and cut away'
  },
  coverSays: (unit: string) => `Left over the next layer or hollow, ${unit}:`,
  noCover: 'No layer and no hollow lies under these cuts.',
  under: (mm: string) => `under ${mm}`,
  between: (a: string, b: string) => `${a} to ${b}`,
  over: (mm: string) => `${mm} or more`,
  leastOver: (over: string, x: string, y: string) => `left over ${over} at the least, at X ${x}, Y ${y}`,
  nothingOff: 'Nothing is left standing, and nothing cut away.',
  leftMost: (mm: string) => `left standing, up to ${mm} high`,
  cutAwayMost: (mm: string) => `cut away, up to ${mm} too much`,
  zero: 'Zero',
  check: 'Zero check',
  checkSays:
    'Before the first cut, with the cutter still: drive over each place, lower until it just touches, type what the machine shows.',
  touch: (name: string, x: string, y: string) => `${name[0]!.toUpperCase()}${name.slice(1)}: X ${x}, Y ${y}`,
  read: (name: string, axis: string) => `${name}, ${axis} as the machine shows it`,
  go: 'Go.',
  noGo: 'Do not cut.',
  all: 'all ways',
  head: {
    program: 'Program',
    cutter: 'Cutter',
    depth: 'As cut',
    time: 'Time',
    meets: 'Meets',
    test: 'Test cut',
    air: 'Air cut',
    cut: 'Cut',
    way: 'Way',
    tool: 'Tool',
    offset: 'Offset',
    radius: 'Least radius',
    passes: 'Passes'
  },
  nothing: 'nothing met',
  more: (n: number) => `and ${n} more`,
  unreached: (high: string) => `${high} left in corners`,
  byHandHead: 'By hand.',
  show: 'Show on the drawing',
  lineShort: (line: number | null) => (line === null ? '' : `line ${line}`),
  linesOf: (file: string, lines: readonly (readonly [number, number])[]) =>
    lines.length === 0 ? file : `${file}, ${lineWords(lines, 6)}`,
  marked: (line: string) => `The finding is ringed${line === '' ? '' : `: ${line}`}`,
  tone: { stop: 'Stop.', caution: 'Caution.', note: 'Note.' },
  runs: {
    rpm: 'turns a minute',
    feed: 'feed, mm/min',
    plunge: 'straight down, mm/min',
    depth: 'a pass, mm deep',
    step: 'sideways, mm'
  },
  again: 'Can be begun anew at',
  save: 'Save all programs',
  saving: 'Putting them together',
  kept: (n: number) => `${n} files in one archive: programs, test cuts, air cuts.`,
  notSaved: (ids: string) => `Programs are not written while a stop stands: ${ids}.`,
  first: 'Before the real cut',
  firstSays: [
    ['Test cut, shallow in cheap board', 'test'],
    ['Air cut, above the work, with stops over the zero and the outermost corners', 'air']
  ],
  pins: 'Pins and flip',
  pin: (n: number, x: string, y: string) => `Pin ${n} at X ${x}, Y ${y}`,
  hole: (hole: string, slot: string | null) =>
    slot === null ? `hole ${hole}` : `slot ${hole} by ${slot} longer`,
  deep: (mm: string) => `${mm} deep`,
  through: 'right through',
  inBed: (mm: string) => `${mm} into the bed`,
  noPins: 'No pins: nothing ties the two faces to each other.',
  totals: 'At the machine',
  cutting: 'Cutting',
  changes: (n: number) => `Cutter changes, ${n}`,
  testing: 'Test cuts and air cuts',
  sum: 'Together',
  hand: 'By hand',
  handSum: 'Your hands',
  making2: 'Making templates',
  waysHead: 'Ways',
  noMachine: 'No machine in this shop: cuts are made by hand.',
  toShop: 'A machine is typed in the shop',
  nothingCut: 'Nothing of this piece is cut by machine.',
  noneCut: 'This piece has no cuts, and no face to flatten.',
  sheets: 'The run sheet of the plan says each cut step by step.',
  found: 'What proving found'
} as const
