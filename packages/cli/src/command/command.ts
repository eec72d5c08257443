/** What a command gives back: what goes to standard output and to standard error, and how it ends. */
export interface Ended {
  readonly out: string
  readonly err?: string
  /** 0 no stop; 1 a stop; 2 input not usable. */
  readonly code: 0 | 1 | 2
}

/** What writes PDF files: loaded only for the commands that do. */
export type PaperModule = typeof import('@castwright/server/paper')

/** One command of the command line. */
export interface Command {
  readonly name: string
  /** One line for the list of commands. */
  readonly about: string
  /** How it is called, and what each option does. */
  readonly help: string
  /** Without `paper` no PDF file is written. */
  readonly run: (args: readonly string[], paper?: PaperModule) => Ended
  /** Whether it writes PDF files. */
  readonly prints?: true
}
