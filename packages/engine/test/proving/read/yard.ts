/**
 * A slow obvious twin of the expressions of a program: tokens by a pattern, operators by a stack (the shunting yard),
 * then the postfix list worked out. Throws where the standard has no value.
 */
const LEVEL: Readonly<Record<string, number>> = {
  '**': 3,
  '*': 2,
  '/': 2,
  MOD: 2,
  '+': 1,
  '-': 1,
  AND: 1,
  OR: 1,
  XOR: 1
}
const radians = (degrees: number): number => degrees * (Math.PI / 180)
const degrees = (angle: number): number => angle / (Math.PI / 180)
const ONE: Readonly<Record<string, (a: number) => number>> = {
  ABS: a => (a < 0 ? -a : a),
  ACOS: a => degrees(Math.acos(a)),
  ASIN: a => degrees(Math.asin(a)),
  COS: a => Math.cos(radians(a)),
  EXP: Math.exp,
  FIX: Math.floor,
  FUP: Math.ceil,
  LN: a => (a === 0 ? Number.NaN : Math.log(a)),
  ROUND: a => Math.sign(a) * Math.floor(Math.abs(a) + 0.5),
  SIN: a => Math.sin(radians(a)),
  SQRT: Math.sqrt,
  TAN: a => Math.tan(radians(a))
}

function two(op: string, a: number, b: number): number {
  if ((op === '/' || op === 'MOD') && b === 0) throw new Error('by zero')
  if (op === '+') return a + b
  if (op === '-') return a - b
  if (op === '*') return a * b
  if (op === '/') return a / b
  if (op === '**') return a ** b
  if (op === 'AND') return Number(Boolean(a) && Boolean(b))
  if (op === 'OR') return Number(Boolean(a) || Boolean(b))
  if (op === 'XOR') return Number(Boolean(a) !== Boolean(b))
  // MOD: what is left of a, never below 0.
  const left = a % b
  return left < 0 ? left + Math.abs(b) : left
}

/** @param parameters values of the parameters, by number */
export function yard(text: string, parameters: Readonly<Record<number, number>>): number {
  const tokens = text
    .replace(/\s/g, '')
    .toUpperCase()
    .match(/\*\*|[[\]*/+#-]|(?:\d+\.?\d*|\.\d+)|MOD|AND|XOR|OR|ATAN|[A-Z]{2,5}/g)!
  const out: (number | string)[] = []
  const stack: string[] = []
  let operand = true
  // A function or "#" belongs to the value that follows it at once.
  const closeValue = (): void => {
    for (;;) {
      const top = stack.at(-1)
      if (top === '#' || (top !== undefined && top in ONE)) out.push(stack.pop()!)
      else if (top === 'ATAN/') out.push(stack.pop()!)
      else return
    }
  }
  for (let k = 0; k < tokens.length; k++) {
    const t = tokens[k]!
    if (operand) {
      if (t === '[' || t === '#' || t in ONE || t === 'ATAN') stack.push(t)
      else if (t === '-' || t === '+') {
        out.push(Number(t + tokens[++k]!))
        operand = false
        closeValue()
      } else {
        out.push(Number(t))
        operand = false
        closeValue()
      }
    } else if (t === ']') {
      while (stack.at(-1) !== '[') out.push(stack.pop()!)
      stack.pop()
      // The first half of an arc tangent waits for the second.
      if (stack.at(-1) === 'ATAN') {
        stack.pop()
        stack.push('ATAN/')
        k++
        operand = true
        continue
      }
      closeValue()
    } else {
      while (stack.length > 0 && (LEVEL[stack.at(-1)!] ?? 0) >= LEVEL[t]!) out.push(stack.pop()!)
      stack.push(t)
      operand = true
    }
  }
  while (stack.length > 0) out.push(stack.pop()!)
  const values: number[] = []
  for (const t of out) {
    if (typeof t === 'number') values.push(t)
    else {
      const b = values.pop()!
      let v: number
      if (t === '#') {
        if (!(b in parameters)) throw new Error('no such parameter')
        v = parameters[b]!
      } else if (t in ONE) v = ONE[t]!(b)
      else if (t === 'ATAN/') v = degrees(Math.atan2(values.pop()!, b))
      else v = two(t, values.pop()!, b)
      if (!Number.isFinite(v)) throw new Error(`${t} has no value`)
      values.push(v)
    }
  }
  return values[0]!
}
