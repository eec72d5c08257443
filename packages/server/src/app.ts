import { Hono } from 'hono'
import { archiveApi } from './api-archive.ts'
import { benchApi } from './api-bench.ts'
import { deskApi } from './api-desk.ts'
import { piecesApi } from './api-pieces.ts'
import type { Guard } from './guard.ts'
import { admit, deviceOf, headersFor, isApi } from './guard.ts'
import type { Env, Parts } from './parts.ts'
import { diskProblem, ServerProblem } from './problem.ts'
import { PROBLEM_POLICY, problemPage, wantsPage } from './problem-page.ts'
import type { Site } from './site.ts'

/** What an unpaired device may ask: who it is, and to be paired. */
const OPEN = new Set(['GET /api/hello', 'POST /api/pair'])

/** The whole of what the server answers. `log` hears of bugs only. */
export function makeApp(
  parts: Parts,
  guard: Guard,
  site: Site,
  log: (line: string) => void,
  more: (app: Hono<Env>) => void
): Hono<Env> {
  const app = new Hono<Env>()
  app.use(async (c, next) => {
    // The path as the router reads it, percent signs taken out: one letter written as %61 must not be another path.
    const { path } = c.req
    admit(guard, c.req.raw, path)
    const device = deviceOf(guard, c.req.raw, c.env?.incoming)
    c.set('device', device)
    const api = isApi(path)
    if (api && device === null && !OPEN.has(`${c.req.method} ${path}`))
      throw new ServerProblem(
        401,
        'not-paired',
        'this device is not paired; allowed: devices paired at the desk'
      )
    await next()
    if (api && !c.res.headers.has('cache-control')) c.res.headers.set('cache-control', 'no-store')
    for (const [key, value] of Object.entries(headersFor(guard, c.req.raw)))
      if (!c.res.headers.has(key)) c.res.headers.set(key, value)
  })
  piecesApi(app, parts)
  benchApi(app, parts)
  deskApi(app, parts)
  archiveApi(app, parts)
  more(app)
  app.all('/api/*', () => {
    throw new ServerProblem(404, 'no-such-thing', 'nothing is asked for at this address')
  })
  app.get('*', c => {
    const { path } = c.req
    const page = (c.req.header('accept') ?? '').includes('text/html') || path === '/'
    const answer = site.answer(path, c.req.header('accept-encoding') ?? '', page)
    if (answer === null) throw new ServerProblem(404, 'no-such-thing', 'nothing is at this address')
    return answer
  })
  app.onError((e, c) => {
    const problem = e instanceof ServerProblem ? e : diskProblem(e)
    if (problem === null) log(e instanceof Error ? (e.stack ?? e.message) : String(e))
    const {
      status,
      code,
      message,
      more: rest
    } = problem ?? new ServerProblem(500, 'bug', 'the server met a fault of its own: nothing was changed')
    for (const [key, value] of Object.entries(headersFor(guard, c.req.raw))) c.header(key, value)
    c.header('cache-control', 'no-store')
    if (isApi(c.req.path) && wantsPage(c.req.method, c.req.header('accept'))) {
      c.header('content-security-policy', PROBLEM_POLICY)
      return c.html(problemPage(message), status as 400)
    }
    return c.json({ error: { code, says: message }, ...rest }, status as 400)
  })
  return app
}
