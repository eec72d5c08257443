import type { Problem } from './problem.ts'
import { shown } from './problem.ts'

/**
 * Old documents stay readable for good: each migration takes a document of version `from` to `from + 1`.
 * A migration never throws on a document that was valid in its version, and touches nothing it need not.
 */
export interface Migration {
  readonly from: number
  readonly about: string
  readonly run: (document: Record<string, unknown>) => Record<string, unknown>
}

/** Version 1 is the first: nothing to migrate yet. A test fails when an entry here is exercised by none. */
export const MIGRATIONS: Readonly<Record<'piece' | 'shop', readonly Migration[]>> = { piece: [], shop: [] }

/**
 * Brings a document to `version`, or says why it cannot be.
 * Only `castwright` is looked at; the schema checks the rest afterwards.
 */
export function migrate(
  document: unknown,
  version: number,
  migrations: readonly Migration[]
): { document: unknown } | { problem: Problem } {
  if (document === null || typeof document !== 'object' || Array.isArray(document)) {
    return {
      problem: {
        path: '',
        found: shown(document),
        allowed: 'a JSON object',
        example: `{ "castwright": ${version}, ... }`
      }
    }
  }
  let at = document as Record<string, unknown>
  const stated = at['castwright']
  if (typeof stated !== 'number' || !Number.isInteger(stated) || stated < 1 || stated > version) {
    return {
      problem: {
        path: '/castwright',
        found: shown(stated),
        allowed:
          typeof stated === 'number' && Number.isInteger(stated) && stated > version
            ? `versions 1 to ${version}: this file was written by a newer Castwright`
            : `the version of the document, 1 to ${version}`,
        example: `"castwright": ${version}`
      }
    }
  }
  for (let v = stated; v < version; v++) {
    const step = migrations.find(m => m.from === v)
    if (!step) throw new Error(`no migration from version ${v}`)
    at = { ...step.run(at), castwright: v + 1 }
  }
  return { document: at }
}
