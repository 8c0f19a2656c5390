/** The rooms and their arrows (docs/architecture.md). Types count as imports too. */
const opticsFolders = [
  'numerics',
  'beam',
  'glass',
  'lens',
  'fibre',
  'coupling',
  'loss',
  'detector',
  'hazard',
  'sensing',
];

/** Inside optics the order of the folders is the order of imports. */
const followTheLight = opticsFolders.slice(0, -1).map((folder, i) => ({
  name: `optics-${folder}-looks-ahead`,
  comment: `${folder}/ may use only what stands before it: ${opticsFolders.slice(0, i).join(', ') || 'nothing'}`,
  severity: 'error',
  from: { path: `^packages/optics/src/${folder}/`, pathNot: '\\.test\\.ts$' },
  to: { path: `^packages/optics/src/(${opticsFolders.slice(i + 1).join('|')})/` },
}));

const rooms = ['optics', 'bench', 'contract', 'station', 'cli'];
const oneDirection = rooms.slice(0, -1).map((room, i) => ({
  name: `${room}-points-right`,
  comment: `${room} may use only the rooms to its left`,
  severity: 'error',
  from: { path: `^packages/${room}/` },
  to: { path: `^packages/(${[...rooms.slice(i + 1), 'web'].join('|')})/` },
}));

module.exports = {
  forbidden: [
    ...oneDirection,
    {
      name: 'web-reaches-the-station-over-the-contract',
      severity: 'error',
      from: { path: '^packages/web/' },
      to: { path: '^packages/(station|cli)/' },
    },
    ...followTheLight,
    {
      name: 'pure-rooms-have-no-machine',
      comment: 'optics, bench and contract import nothing from Node',
      severity: 'error',
      from: { path: '^packages/(optics|bench|contract)/src/', pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'optics-has-no-package',
      severity: 'error',
      from: { path: '^packages/optics/src/', pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['npm', 'npm-dev', 'npm-no-pkg', 'unknown'] },
    },
    {
      name: 'bench-packages-are-decisions',
      comment: 'docs/decisions: only yaml so far',
      severity: 'error',
      from: { path: '^packages/bench/src/', pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['npm', 'npm-dev', 'npm-no-pkg', 'unknown'], pathNot: 'node_modules/yaml/' },
    },
    {
      name: 'contract-packages-are-decisions',
      comment: 'docs/decisions: only zod so far',
      severity: 'error',
      from: { path: '^packages/contract/src/', pathNot: '\\.test\\.ts$' },
      to: { dependencyTypes: ['npm', 'npm-dev', 'npm-no-pkg', 'unknown'], pathNot: 'node_modules/zod/' },
    },
    {
      name: 'rooms-have-doors',
      comment: 'another room is used through its index, not through its files',
      severity: 'error',
      from: { path: '^packages/([^/]+)/src/' },
      to: { path: '^packages/[^/]+/src/', pathNot: ['^packages/$1/', '^packages/[^/]+/src/index\\.ts$'] },
    },
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'tests-are-not-used',
      severity: 'error',
      from: { pathNot: '\\.test\\.ts$' },
      to: { path: '\\.test\\.ts$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
    tsConfig: { fileName: 'tsconfig.tests.json' },
    exclude: { path: '(^|/)dist/' },
  },
};
