import type { Check } from '../../../engine/src/findings/finding.ts'

/** Stands for a check that is silent on pieces without what it looks at: it is loaded for the first that has some. */
export const lateCheck = (id: string, real: () => Check | undefined): Check => ({
  id,
  get about() {
    return real()?.about ?? ''
  },
  get cases() {
    return real()?.cases ?? []
  },
  run: work => real()?.run(work) ?? []
})
