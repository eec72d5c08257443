/** What the reader has to say about one place of a program. */
export interface Complaint {
  /** Line of the file, from 1; 0: the file as a whole. */
  readonly line: number
  /** Character of the line, from 1; 0: the line as a whole. */
  readonly column: number
  /** An error: a control that follows the standard stops here. */
  readonly severity: 'error' | 'warning' | 'note'
  readonly says: string
  readonly found: string
  readonly allowed: string
}

/** Complaints kept word for word; the rest are counted. */
const KEPT = 200

/** Thrown to leave a line; the complaint stands in the list already. One object for all: no stack is taken. */
const LEFT_OUT = new Error('this line of the program is left out')

/** The complaints of one reading, and where the reader stands. */
export class Complaints {
  readonly list: Complaint[] = []
  errors = 0
  warnings = 0
  notes = 0
  /** Lines of which all or the move was left out. */
  leftOut = 0
  line = 0
  /** Whether the words of the line are being read; else they are being carried out. */
  reading = true
  private readonly said = new Set<string>()

  /** Whether further complaints are counted only. */
  get full(): boolean {
    return this.list.length >= KEPT
  }

  add(severity: Complaint['severity'], column: number, says: string, found: string, allowed: string): void {
    if (severity === 'error') this.errors++
    else if (severity === 'warning') this.warnings++
    else this.notes++
    if (!this.full) this.list.push({ line: this.line, column, severity, says, found, allowed })
  }

  /** Said at the first place only. */
  once(
    key: string,
    severity: Complaint['severity'],
    column: number,
    says: string,
    found: string,
    allowed: string
  ): void {
    if (this.said.has(key)) return
    this.said.add(key)
    this.add(severity, column, says, found, allowed)
  }

  /** Says why and leaves the line: nothing of it is done, or, when it was being carried out, its move is not made. */
  fail(column: number, says: string, found: string, allowed: string): never {
    this.leftOut++
    const after = this.reading ? 'Nothing on this line is done.' : 'The move of this line is not made.'
    this.add('error', column, `${says} ${after}`, found, allowed)
    throw LEFT_OUT
  }

  /** Whether a thing caught is a line left out, already spoken of. */
  static isLeftOut(thrown: unknown): boolean {
    return thrown === LEFT_OUT
  }
}

/** One complaint as a line of text. */
export function complaintText(c: Complaint): string {
  const place =
    c.line === 0 ? 'the file' : c.column === 0 ? `line ${c.line}` : `line ${c.line}, column ${c.column}`
  return `${place}: ${c.says} Found: ${c.found}. Allowed: ${c.allowed}.`
}
