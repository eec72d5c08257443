/** What stops a command: one message for the person at the keyboard, never a stack trace. */
export class Failure extends Error {
  constructor(message: string) {
    super(message)
    this.name = 'Failure'
  }
}

const SAYS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file or folder',
  EACCES: 'no leave to use it',
  EPERM: 'no leave to use it',
  EISDIR: 'a folder, not a file',
  ENOTDIR: 'something on the way to it is a file, not a folder',
  ENOSPC: 'no room left on the disk',
  EDQUOT: 'no room left for this user on the disk',
  EFBIG: 'more than may be written to one file here',
  EROFS: 'a disk that cannot be written to',
  EEXIST: 'something that is there already',
  ENAMETOOLONG: 'a name that is too long',
  ELOOP: 'links that lead in a circle',
  EMFILE: 'too many files open',
  ERR_INVALID_ARG_VALUE: 'a name that no file can have',
  EIO: 'a disk that does not answer',
  EBUSY: 'something that is in use'
}

/** A failed call of the file system in words. */
export function diskWords(error: unknown): string {
  const code = (error as { code?: unknown } | null)?.code
  return typeof code === 'string' ? (SAYS[code] ?? `a disk error (${code})`) : String(error)
}
