import { randomFrom } from '../../shape/random.ts'

/** Sound programs that make use of all parts of the language; each is read without an error. */
export const PROGRAMS: readonly string[] = [
  '%\n(invented: a slot and a disc)\nN10 G21 G17 G90 G94 G54 G40 G49 G80\nN20 T1 M6\nN30 G43 H1\nN40 S18000 M3\nN50 G0 X0 Y0 Z10\nN60 G1 Z-2 F300\nN70 X40 F1200\nN80 G3 X40 Y20 I0 J10\nN90 G1 X0\nN100 G2 X0 Y0 R10\nN110 G0 Z10\nN120 M5 M9\nN130 M30\n%\n',
  'G21 F200\nM3 S9000\nG0 X1 Y2 Z30\nG98 G81 X4 Y5 Z-1.5 R2.8\nX8\nG99 X12 L2\nG83 X20 Z-9 R2 Q1.5\nY9\nG82 X5 Z-3 R2 P0.5\nG85 X6 Z-3 R2\nG84 X7 Z-3 R2\nG86 X8 Z-3 R2 P1\nG87 X9 Z-8 R2 I1 J0 K-2\nG89 X3 Z-1 R2 P1\nG80\nG0 Z30\nM2\n',
  '#1=12.5 (width)\n#2=[#1 * 2 + 1]\nG20 G91 F#1\nG0 X1 Y1 Z1\nX[SIN[30] * #2] Y[2 ** 0.5] Z[0 - SQRT[4]]\nM2\n',
  'G21 G18 F100\nG0 X5 Y0 Z5\nG2 X10 Z5 I2.5 K0\nG3 X5 Z5 R2.5 Y3\nG19\nG2 Y8 Z5 J2.5\nG17 G93\nG1 X1 F2\nG2 X3 I1 F3\nG94\nG1 X9 F100\nM0\nM60\nM2\n',
  'G21\nG10 L2 P2 X100 Y50 Z0\nG55 G0 X0 Y0 Z5\nG92 X3\nX1\nG92.2\nG92.3\nX2\nG92.1\nG53 G0 Z0\nG28 X1\nG30\nG54 X0 Y0 Z0\nG38.2 Z-5 F10\n/G4 P1\nM48 M7\nM49 M8\nG61\nG61.1\nG64\nG41 D1\nG40\nM2\n',
  `G21 G90\nF900\nS12000 M3\nG0 X0 Y0 Z5\n${Array.from({ length: 120 }, (_, k) => `G1 X${(k * 0.37).toFixed(3)} Y${(20 * Math.sin(k / 9)).toFixed(3)} Z${(-k / 100).toFixed(2)}`).join('\r\n')}\r\nG0 Z5\r\n(MSG, done)\r\nM30\r\n`
]

type Random = () => number
const at = (random: Random, n: number): number => Math.min(n - 1, Math.floor(random() * n))
const pick = <T>(random: Random, list: readonly T[]): T => list[at(random, list.length)]!

const NUMBERS = [
  '1e308',
  '9999999',
  '-1000001',
  '1000000',
  '0',
  '-0',
  '.',
  '-',
  'NaN',
  '#5400',
  '#1',
  '[1/0]',
  '[',
  ']',
  '0.00000001',
  '9'.repeat(100),
  `${'['.repeat(70)}1`,
  `[${'9**'.repeat(50)}9]`,
  '1.2.3',
  '1 2 3'
]
const WORDS = [
  'G1',
  'G2',
  'G3',
  'G18',
  'G19',
  'G20',
  'G91',
  'G93',
  'G38.2',
  'G41',
  'G53',
  'G59.3',
  'G70',
  'G81 R1',
  'G83 Q0.0001 R1',
  'G87',
  'G92 X0',
  'G98',
  'G10 L2 P1 X5',
  'M2',
  'M6',
  'M98',
  'R5',
  'I0',
  'L99999999',
  'P-1',
  'T65536',
  'A90',
  '#1=#2',
  '#[#1]=5',
  '(',
  ')',
  '%',
  '/',
  ';',
  '(MSG,',
  '\u0000',
  '\u0007',
  '\uFEFF',
  '\uD800',
  '\r',
  '\n'
]

const MUTATIONS: readonly ((text: string, random: Random) => string)[] = [
  function flipBit(text, random) {
    const k = at(random, text.length)
    return (
      text.slice(0, k) + String.fromCharCode(text.charCodeAt(k) ^ (1 << at(random, 12))) + text.slice(k + 1)
    )
  },
  function truncate(text, random) {
    return random() < 0.5 ? text.slice(0, at(random, text.length)) : text.slice(at(random, text.length))
  },
  function cutOut(text, random) {
    const k = at(random, text.length)
    return text.slice(0, k) + text.slice(k + at(random, 30))
  },
  function repeat(text, random) {
    const k = at(random, text.length)
    return text.slice(0, k) + text.slice(k, k + at(random, 100)).repeat(1 + at(random, 30)) + text.slice(k)
  },
  function otherNumber(text, random) {
    const found = [...text.matchAll(/-?\d+\.?\d*/g)]
    if (found.length === 0) return text
    const m = pick(random, found)
    const by = random() < 0.5 ? pick(random, NUMBERS) : (Number(m[0]) * 10 ** (6 * random() - 3)).toFixed(4)
    return text.slice(0, m.index) + by + text.slice(m.index + m[0].length)
  },
  function addWord(text, random) {
    const k = at(random, text.length)
    return `${text.slice(0, k)} ${pick(random, WORDS)} ${text.slice(k)}`
  },
  function addLine(text, random) {
    const lines = text.split('\n')
    lines.splice(at(random, lines.length), 0, pick(random, pick(random, PROGRAMS).split('\n')))
    return lines.join('\n')
  },
  function swapLines(text, random) {
    const lines = text.split('\n')
    const [i, j] = [at(random, lines.length), at(random, lines.length)]
    ;[lines[i], lines[j]] = [lines[j]!, lines[i]!]
    return lines.join('\n')
  },
  function otherLetter(text, random) {
    const k = at(random, text.length)
    return text.slice(0, k) + String.fromCharCode(65 + at(random, 26)) + text.slice(k + 1)
  },
  function noise(text, random) {
    const k = at(random, text.length)
    let bytes = ''
    for (let n = at(random, 600); n > 0; n--) bytes += String.fromCharCode(at(random, 256))
    return text.slice(0, k) + bytes + text.slice(k)
  },
  function oneLine(text, random) {
    return random() < 0.3 ? text.replace(/\n/g, ' ') : text.replace(/ /g, '\n')
  }
]

/** A broken, hostile or merely odd program; the same for the same seed. */
export function mutateProgram(seed: number): string {
  const random = randomFrom(seed)
  for (let k = 0; k < 3; k++) random()
  let text = pick(random, PROGRAMS)
  for (let n = 1 + at(random, 4); n > 0 && text !== ''; n--) text = pick(random, MUTATIONS)(text, random)
  return text
}
