// The public surface of the server. Grouped by noun; nothing computed here.

export { ServerProblem } from './problem.ts'
export type { Example, ServeOptions, Serving } from './serve.ts'
export { serve } from './serve.ts'
