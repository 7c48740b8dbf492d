/** What `airtally simulate` prints. */
import type { SimulateChoices, SimulatedSheet } from "../../../src/job/index.ts";

type Written = {
  readonly out: string | undefined;
  readonly engineOut: string | undefined;
  readonly truth: string | undefined;
  readonly json: string | undefined;
};

export async function simulatedText(sheet: SimulatedSheet, written: Written, width: number): Promise<string> {
  const { formatDuration, formatNumber, formatPercent, textTable, wrapText } = await words();
  const { ambient, recorder } = sheet;
  const share = (value: number | null, signed: boolean) => (value === null ? "" : formatPercent(value, signed));
  const cell = (value: number | null, digits = 3) => (value === null ? "" : formatNumber(value, digits));
  const meter = sheet.steps.some((step) => step.meterReading_g_per_s !== null);
  const table = textTable(
    [
      "truth, mean of",
      "from",
      "to",
      "rev/min",
      "kPa",
      "air g/s",
      ...(meter ? ["meter g/s"] : []),
      "leaks g/s",
      "lambda",
      "trims",
    ],
    sheet.steps.map((step) => [
      step.what,
      `${cell(step.start_s, 4)} s`,
      `${cell(step.end_s, 4)} s`,
      cell(step.speed_rpm),
      cell(step.manifoldPressure_kPa),
      cell(step.air_g_per_s),
      ...(meter ? [cell(step.meterReading_g_per_s)] : []),
      cell(step.leaks_g_per_s, 2),
      cell(step.lambda),
      share(step.trims, true),
    ]),
  );
  const blocks = [
    wrapText(sheet.headline, width),
    wrapText(
      `Family ${sheet.family}, protocol ${sheet.protocol}, seed ${sheet.seed}: ${formatDuration(sheet.duration_s)}. Air outside: ${formatNumber(ambient.pressure_kPa, 4)} kPa, ${formatNumber(ambient.temperature_degC)} °C, ${formatPercent(ambient.relativeHumidity, false)} humidity. Recorder: ${recorder.name}, ${formatNumber(recorder.rate_per_s)} ${recorder.name === "logger" ? "rows" : "readings"} a second, ${recorder.channels.length} channels.`,
      width,
    ),
    table,
    writtenLines(written),
  ];
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function writtenLines({ out, engineOut, truth, json }: Written): string[] {
  const named: readonly (readonly [string, string | undefined])[] = [
    ["the recording", out],
    ["the engine file", engineOut],
    ["the truth", truth],
    ["this as data", json],
  ];
  const files = named.filter(([, file]) => file !== undefined);
  const next =
    out !== undefined && engineOut !== undefined
      ? [`Next: airtally check ${quoted(out)} --engine ${quoted(engineOut)}`]
      : [];
  if (files.length > 0) return [...files.map(([what, file]) => `Wrote ${what}: ${file}`), ...next];
  return [
    "Nothing was written. To keep it, name files:",
    "  --out recording.csv --engine-out engine.json --truth truth.csv",
  ];
}

/** As a shell takes it. */
function quoted(path: string): string {
  return /^[\w./\\:-]+$/.test(path) ? path : JSON.stringify(path);
}

export async function choicesText(choices: SimulateChoices, width: number): Promise<string> {
  const { formatDuration, wrapText } = await words();
  const listed = (rows: readonly (readonly [name: string, text: string])[]) => {
    const indent = 4 + Math.max(...rows.map(([name]) => name.length));
    return rows.flatMap(([name, text]) =>
      wrapText(text, width - indent).map((line, i) => (i === 0 ? `  ${name}` : "").padEnd(indent) + line),
    );
  };
  const blocks = [
    wrapText(`${choices.notice} Every engine below is made up.`, width),
    [
      "Families (--family)",
      ...listed(choices.families.map((row) => [row.family, row.engine.replace(/^invented /, "")])),
    ],
    [
      "Protocols (--protocol)",
      ...listed(
        choices.protocols.map((row) => [
          row.protocol,
          `${row.does} (${row.usual_s > row.least_s ? `from ${formatDuration(row.least_s)}, usually ` : ""}${formatDuration(row.usual_s)})`,
        ]),
      ),
    ],
    ["Recorders (--recorder)", ...listed(choices.recorders.map((row) => [row.recorder, row.does]))],
    [
      "Faults (--fault CAUSE=SIZE)",
      ...listed(
        choices.faults.map((row) => [
          `${row.cause}=${row.example}`,
          `${row.is}. Size: ${row.sizeMeans}, ${row.low} to ${row.high}${row.unit === "1" ? "" : ` ${row.unit}`}.${row.needs === null ? "" : ` Needs: ${row.needs}.`}`,
        ]),
      ),
    ],
  ];
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

/** Loaded when something is printed: the report room draws pages too, and takes a while. */
function words() {
  return import("../../../src/report/index.ts");
}
