/** Depend downwards only: main, app, api and docs, views, core, schema. `scripts/check-layers.mjs` runs this. */
const only = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to })

module.exports = {
  forbidden: [
    only('no-cycles', 'a cycle hides who depends on whom', {}, { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } }),
    only('no-orphans', 'a file that nothing uses', { orphan: true, path: '^src' }, {}),
    only(
      'core-takes-types-only',
      'the core is callable without a server: from outside it takes types, at run time nothing',
      { path: '^src/core' },
      { path: '^src/(?!core/)', dependencyTypesNot: ['type-only'] },
    ),
    only(
      'core-takes-schema-types-only',
      'and those types come from the schemas',
      { path: '^src/core' },
      { path: '^src/(?!core/|schema/|api/[^/]+/schema\\.ts$)' },
    ),
    only(
      'core-without-packages',
      'only the math parts and the fit use a package, and none uses a module of Node',
      { path: '^src/core', pathNot: '^src/core/(math-parts|measurement/least-squares)\\.ts$' },
      { dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'core', 'npm-no-pkg', 'npm-unknown'] },
    ),
    only(
      'math-parts-are-mathjs',
      'the math parts use mathjs and nothing else',
      { path: '^src/core/math-parts\\.ts$' },
      { dependencyTypes: ['npm', 'npm-dev', 'core'], pathNot: 'node_modules/mathjs/' },
    ),
    only(
      'fit-is-matrices',
      'the fit uses matrices and nothing else',
      { path: '^src/core/measurement/least-squares\\.ts$' },
      { dependencyTypes: ['npm', 'npm-dev', 'core'], pathNot: 'node_modules/ml-matrix/' },
    ),
    only(
      'calculations-apart',
      'a calculation does not reach into the folder of another',
      { path: '^src/api/([^/]+)/' },
      { path: '^src/api/[^/]+/', pathNot: '^src/api/$1/' },
    ),
    only(
      'schema-stands-alone',
      'schemas are written with typebox and with each other',
      { path: '^src/schema' },
      { pathNot: '^src/schema/|node_modules/typebox/' },
    ),
    only('views-know-no-server', 'a view turns a result into text', { path: '^src/views' }, { path: '^src/(api|docs|app|main)' }),
    only(
      'page-takes-types-only',
      'the touch page is a client like others: it takes types of the contract and its example',
      { path: '^src/kiosk/browser' },
      { path: '^src/(?!kiosk/browser/|api/design-check/example\\.ts$)', dependencyTypesNot: ['type-only'] },
    ),
    only('page-behind-the-service', 'nothing of the service uses the code of the page', { path: '^src/(?!kiosk/browser/)' }, { path: '^src/kiosk/browser' }),
    only('api-below-app', 'routes do not know who registers them', { path: '^src/(api|docs)' }, { path: '^src/((app|main)\\.ts$|workers/)' }),
    only(
      'service-around-the-routes',
      'what keeps the service running is put on by the app, and no route knows of it',
      { path: '^src/(?!(app|main)\\.ts$|service/)' },
      { path: '^src/service/' },
    ),
    only(
      'service-knows-problems-only',
      'of what is served it knows how to refuse, and how busy the threads are',
      { path: '^src/service/' },
      { path: '^src/(?!service/|api/problem\\.ts$|workers/pool\\.ts$)' },
    ),
    only('no-tests-in-src', 'what is built does not need the tests', { path: '^src' }, { path: '^tests' }),
    only('resolvable', 'every import leads somewhere', {}, { couldNotResolve: true }),
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: 'specify',
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'node', 'default'] },
  },
}
