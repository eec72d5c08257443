/** What a request cannot have: a status, a word for programs and a sentence for people. */
export class ServerProblem extends Error {
  readonly status: number
  readonly code: string
  readonly more: Readonly<Record<string, unknown>>

  constructor(status: number, code: string, says: string, more: Readonly<Record<string, unknown>> = {}) {
    super(says)
    this.name = 'ServerProblem'
    this.status = status
    this.code = code
    this.more = more
  }
}

/** A request that cannot be used: what was found and what is allowed. */
export function refused(says: string): ServerProblem {
  return new ServerProblem(400, 'not-usable', says)
}

/** Words and status for what the disk or the database answered; null for what is neither. */
export function diskProblem(e: unknown): ServerProblem | null {
  const text = `${(e as { code?: string }).code ?? ''} ${e instanceof Error ? e.message : ''}`
  if (/ENOSPC|SQLITE_FULL|disk is full|EFBIG|EDQUOT/i.test(text))
    return new ServerProblem(
      507,
      'disk-full',
      'the disk of the desk is full: nothing was changed; free some room and save again'
    )
  if (/EROFS|EACCES|EPERM|SQLITE_READONLY|readonly database|SQLITE_CANTOPEN/i.test(text))
    return new ServerProblem(
      500,
      'read-only',
      'the folder of the pieces cannot be written: nothing was changed; its rights or its disk want looking at'
    )
  if (/SQLITE_IOERR|disk I\/O error|EIO/i.test(text))
    return new ServerProblem(500, 'disk-failed', 'the disk of the desk did not take it: nothing was changed')
  return null
}
