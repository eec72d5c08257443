// Which way imports may go. The engine's folders stand in the order of the flow: a folder imports
// only what stands before it. ARCHITECTURE.md draws the same picture.
const engine = 'packages/engine/src'
const base = ['quantity', 'shape', 'catalogue', 'piece']
const models = ['resin', 'timber', 'coat', 'colour', 'mould', 'plate', 'tolerance']
const stages = [
  'steps',
  'stack',
  'cast',
  'fits',
  'cuts',
  'proving',
  'programs',
  'finish',
  'calendar',
  'cost',
  'findings',
  'sheets',
  // Bodies in the round take names and colours from the sheets.
  'round'
]

const only = (folder, allowed) => ({
  name: `${folder}-imports-only-what-stands-before-it`,
  severity: 'error',
  from: { path: `^${engine}/${folder}/` },
  to: {
    path: `^${engine}/`,
    // Sheets draw a plan and its days: plan.ts and both answers stand before them and do not import them.
    pathNot: `^${engine}/((${[folder, ...allowed].join('|')})/${folder === 'sheets' ? '|plan.ts$|plan-answer.ts$|days-answer.ts$' : ''})`
  }
})

module.exports = {
  forbidden: [
    { name: 'no-circle', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'engine-is-pure',
      comment: 'no Node modules and no other package of ours in the engine',
      severity: 'error',
      from: { path: `^${engine}` },
      to: {
        pathNot: [
          `^${engine}`,
          '^node_modules/(zod|clipper2-ts|saxes|xmlchars|svg-pathdata|d3-delaunay|delaunator|robust-predicates|@types/d3-delaunay)/'
        ]
      }
    },
    {
      name: 'cli-through-the-door',
      severity: 'error',
      from: { path: '^packages/cli/src' },
      to: { path: `^${engine}`, pathNot: `^${engine}/index.ts$` }
    },
    {
      name: 'page-draws-only',
      comment: 'the page asks the engine for cores and their drawing, never for a plan: it stays small',
      severity: 'error',
      from: { path: '^packages/page/src' },
      to: { pathNot: ['^packages/page/src', `^${engine}/(sheets|shape)/`] }
    },
    {
      name: 'server-through-the-door',
      comment: 'the server asks the engine as any other caller does, and knows neither command nor app',
      severity: 'error',
      from: { path: '^packages/server/src' },
      to: { path: `^(${engine}|packages/(cli|page|app)/)`, pathNot: `^${engine}/index.ts$` }
    },
    {
      name: 'app-knows-no-server',
      severity: 'error',
      from: { path: '^packages/app/src' },
      to: { path: '^packages/(server|cli|page)/', pathNot: '^packages/page/src/(page.css|print.ts)$' }
    },
    {
      name: 'plans-in-the-worker',
      comment: 'the whole engine is loaded by the worker alone; screens draw what it sends',
      severity: 'error',
      from: { path: '^packages/app/src', pathNot: '^packages/app/src/worker/' },
      to: { path: `^${engine}/(index|plan|work).ts$`, dependencyTypesNot: ['type-only'] }
    },
    {
      name: 'round-view-on-demand',
      severity: 'error',
      from: { path: '^packages/app/src', pathNot: '^packages/app/src/round/' },
      to: { path: '^node_modules/three/' }
    },
    {
      name: 'no-dev-in-source',
      severity: 'error',
      from: { path: '^packages/[^/]+/src' },
      to: { dependencyTypes: ['npm-dev'] }
    },
    {
      name: 'cuts-and-proving-are-strangers',
      severity: 'error',
      from: { path: `^${engine}/cuts/` },
      to: { path: `^${engine}/proving/` }
    },
    {
      name: 'rescue-stands-above',
      comment: 'rescue plans changed pieces: it calls plan, and nothing of the flow knows it',
      severity: 'error',
      from: { path: `^${engine}/`, pathNot: `^${engine}/(rescue/|index.ts$)` },
      to: { path: `^${engine}/rescue/` }
    },
    {
      name: 'orders-stand-above',
      comment: 'other orders are planned anew: they call days, and nothing of the flow knows them',
      severity: 'error',
      from: { path: `^${engine}/`, pathNot: `^${engine}/(orders/|index.ts$)` },
      to: { path: `^${engine}/orders/` }
    },
    ...base.map((folder, i) => only(folder, base.slice(0, i))),
    // A model takes numbers and materials; it knows nothing of a piece.
    ...models.map(folder => only(folder, ['quantity', 'shape', 'catalogue'])),
    // The mathematics under the drawing screens: it edits documents, and nothing of the flow imports it.
    only('draw', ['quantity', 'shape', 'piece']),
    ...stages.map((folder, i) =>
      only(folder, [
        ...base,
        ...models,
        ...stages.slice(0, i).filter(s => !(folder === 'proving' && s === 'cuts'))
      ])
    )
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(dist|test)/' },
    tsConfig: { fileName: 'tsconfig.base.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['source', 'import', 'default'],
      extensions: ['.ts', '.js', '.mjs', '.json']
    }
  }
}
