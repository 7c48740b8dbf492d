// The types of the answers, which report and web draw: the only files of job that they may read.
const RESULT_TYPES = ["job/result", "job/meter-result", "job/recording-card"];

// The import table of the project. The table is the rule: src/<room> may import itself and what stands here.
// Entry to another room only through its index.ts; npm packages in the core only from CORE_PACKAGES.
const TABLE = {
  quantities: [],
  numerics: [],
  gas: ["quantities", "numerics"],
  engine: ["quantities", "numerics", "gas"],
  meters: ["quantities", "numerics", "gas", "engine"],
  recording: ["quantities"],
  channels: ["quantities", "numerics", "gas", "engine", "recording"],
  tally: ["quantities", "numerics", "gas", "engine", "meters", "channels"],
  findings: ["quantities", "numerics", "gas", "engine", "meters", "channels", "tally"],
  correction: ["quantities", "numerics", "gas", "engine", "meters", "channels", "tally", "findings"],
  "model-engine": ["quantities", "numerics", "gas", "engine", "meters"],
  report: ["quantities", "channels", "tally", "findings", "correction", "model-engine", ...RESULT_TYPES],
  job: [
    "quantities",
    "numerics",
    "gas",
    "engine",
    "meters",
    "recording",
    "channels",
    "tally",
    "findings",
    "correction",
    "model-engine",
  ],
};
const CORE_PACKAGES = ["zod", "pure-rand", "react", "react-dom"];
const METER_KINDS = ["vane", "vortex", "hot-wire", "hot-film", "manifold-pressure", "throttle", "fuel-side", "exhaust"];

const rooms = Object.keys(TABLE);
const test = "\\.test\\.tsx?$";
const roomRules = rooms.map((room) => ({
  name: `${room}-imports-only-what-the-table-allows`,
  severity: "error",
  from: { path: `^src/${room}/`, pathNot: test },
  to: {
    path: `^(src|edge|web|published|test|speed)/`,
    pathNot: `^src/(${[room, ...TABLE[room]].join("|")})(/|\\.ts$)`,
  },
}));

module.exports = {
  forbidden: [
    ...roomRules,
    ...rooms.map((room) => ({
      name: `${room}-is-entered-through-its-index`,
      severity: "error",
      from: { path: "^(src|edge|web)/", pathNot: [`^src/${room}/`, test] },
      to: {
        path: `^src/${room}/`,
        pathNot: [`^src/${room}/index\\.tsx?$`, `^src/(${RESULT_TYPES.join("|")})\\.ts$`, "\\.css$"],
      },
    })),
    ...METER_KINDS.map((kind) => ({
      name: `meter-${kind}-imports-no-other-kind`,
      severity: "error",
      from: { path: `^src/meters/${kind}/` },
      to: { path: `^src/meters/(${METER_KINDS.filter((k) => k !== kind).join("|")})/` },
    })),
    {
      name: "report-takes-the-result-types-only",
      severity: "error",
      from: { path: "^src/report/", pathNot: test },
      to: { path: "^src/job/", pathNot: `^src/(${RESULT_TYPES.join("|")})\\.ts$` },
    },
    {
      name: "no-node-in-the-core",
      severity: "error",
      from: { path: "^src/", pathNot: test },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "core-packages-from-the-short-list",
      severity: "error",
      from: { path: "^src/", pathNot: test },
      to: { path: "node_modules/", pathNot: `node_modules/(@types/)?(${CORE_PACKAGES.join("|")})/` },
    },
    {
      name: "edges-enter-by-job-and-report",
      severity: "error",
      from: { path: "^edge/", pathNot: test },
      to: { path: "^(src|web)/", pathNot: "^src/(job|quantities|report)/" },
    },
    {
      name: "cli-never-imports-server",
      severity: "error",
      from: { path: "^edge/cli/" },
      to: { path: "^edge/storage/" },
    },
    {
      name: "server-never-imports-cli",
      severity: "error",
      from: { path: "^edge/server/" },
      to: { path: "^edge/(cli|storage)/" },
    },
    {
      name: "web-talks-by-contract",
      severity: "error",
      from: { path: "^web/", pathNot: test },
      to: {
        path: "^(edge|src)/",
        pathNot: `^(edge/server/contract\\.ts|src/(${RESULT_TYPES.join("|")})\\.ts|src/report/|src/quantities/)`,
      },
    },
    { name: "no-cycles", severity: "error", from: {}, to: { circular: true } },
    {
      name: "nothing-unresolved",
      severity: "error",
      from: {},
      to: { couldNotResolve: true, pathNot: "\\?(inline|raw|url)$" },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.base.json" },
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)(dist|\\.cache)/" },
    enhancedResolveOptions: {
      extensions: [".ts", ".tsx", ".js", ".json", ".css"],
      exportsFields: ["exports"],
      conditionNames: ["import", "node", "default", "types"],
    },
  },
};
