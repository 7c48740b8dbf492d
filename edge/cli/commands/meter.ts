/** airtally meter: what one meter says, and what is to be known about it. One sub-command a question. */
import { type Command, Option } from "commander";
import {
  type AirOptions,
  type AmbientOptions,
  FIT_LAWS,
  meterAmbient,
  meterBench,
  meterConvert,
  meterCurve,
  meterFit,
  type UncertaintyOptions,
} from "../../../src/job/index.ts";
import { type Failure, type Result, success } from "../../../src/quantities/index.ts";
import type { MeterResult } from "../../../src/report/index.ts";
import { CliError, unusable } from "../cli-error.ts";
import { type InputFile, readTextInput } from "../input-file.ts";
import { planOutputs } from "../output-file.ts";
import { today } from "../today.ts";

type Outputs = { json?: string; report?: string; force?: boolean };
type Meter = { kind?: "vane" | "vortex" | "hot-wire" | "hot-film"; meter?: "meter" | "meter-2" };
/** what comes of a call: the answer, and further files in the order of the options that name them */
type Answer = { readonly sheet: MeterResult; readonly files: readonly string[] };
type Task = {
  readonly inputs: readonly InputFile[];
  readonly options: Outputs;
  /** paths of further files */
  readonly outs?: readonly (string | undefined)[];
  readonly work: () => Result<Answer>;
};

const CURVE_FILE = "engine file, curve file (airtally-curve/1) or curve as CSV";

export function addMeter(program: Command, version: string): void {
  const meter = program
    .command("meter")
    .description("know one meter: its signal as air, its curve, what height and heat do to it, a curve from a bench");
  for (const add of [addConvert, addCurve, addAmbient, addFit, addBench]) {
    add(meter, version)
      .option("--report <file>", "write the page as one self-contained HTML file")
      .option("--json <file>", "write the answer (airtally-meter/1); - for standard output")
      .option("--force", "replace existing output files")
      .exitOverride()
      .showHelpAfterError(false);
  }
}

function addConvert(meter: Command, toolVersion: string): Command {
  const command = meter
    .command("convert")
    .description("signals to air mass, and flows back to signals, in the air at the meter")
    .argument("<file>", CURVE_FILE)
    .argument("[signals...]", 'such as "2.5 V"; a bare number is in the unit of the curve')
    .option(
      "--flow <flow>",
      'the way back, such as "20 g/s"; may be repeated',
      (one, all: string[]) => [...all, one],
      [],
    )
    .option("--signal-error <signal>", 'how sure the signal is, such as "5 mV" (one standard deviation, as all below)')
    .option("--gate <time>", 'frequency: pulses are counted over, such as "0.1 s"')
    .option("--ground-shift <voltage>", "between meter and computer")
    .option("--supply-error <share>", "of a voltage that follows its supply, such as 0.5%")
    .option("--curve-error <share>", "of the curve, beside its own band")
    .option("--pressure-error <pressure>", "of the air at the meter")
    .option("--temperature-error <kelvin>", 'of the air at the meter, such as "2 K"')
    .option("--installation-error <share>", "bends, filter seat, pulsation");
  type Options = Outputs & Meter & AirOptions & UncertaintyOptions & { flow: string[] };
  return withAir(withMeter(command)).action((path: string, signals: string[], options: Options) => {
    const { text, file } = readTextInput(path);
    const { flow: flows, kind, meter: id } = options;
    const named = { file: { name: file.name, text }, kind, meter: id };
    const work = () =>
      alone(meterConvert({ ...named, signals, flows, air: options, uncertainty: options, toolVersion }));
    return finish({ inputs: [file], options, work });
  });
}

function addCurve(meter: Command, toolVersion: string): Command {
  const command = meter
    .command("curve")
    .description("print and draw a meter's curve; what its kind senses, what it is blind to, how it fails")
    .argument("<file>", CURVE_FILE)
    .option("--rows <count>", "rows to print", "21");
  return withAir(withMeter(command)).action(
    (path: string, options: Outputs & Meter & AirOptions & { rows: string }) => {
      const { text, file } = readTextInput(path);
      const { kind, meter: id } = options;
      const named = { file: { name: file.name, text }, kind, meter: id };
      const work = () => alone(meterCurve({ ...named, air: options, rows: Number(options.rows), toolVersion }));
      return finish({ inputs: [file], options, work });
    },
  );
}

function addAmbient(meter: Command, toolVersion: string): Command {
  const corrected = ["none", "temperature", "pressure", "temperature-and-pressure"];
  const command = meter
    .command("ambient")
    .description("what altitude, heat, humidity and tilt do to the mass this meter reads, and so to the mixture")
    .argument("[file]", `${CURVE_FILE}; or none, with --kind`)
    .addOption(
      new Option("--compensation <what>", "what the engine computer corrects; the usual cases if left out").choices(
        corrected,
      ),
    )
    .option("--altitudes <list>", 'such as "0 m, 1000 m, 2000 m"')
    .option("--sea-level-temperature <temperature>", "below those altitudes; that of the curve's air if left out")
    .option("--temperatures <list>", 'such as "-20 degC, 20 degC, 50 degC"')
    .option("--flap-torque <share>", "vane: the flap's weight out of balance, over the full spring torque")
    .option("--tilts <list>", 'vane, with --flap-torque: such as "-10 deg, 10 deg"')
    .option("--preload <share>", "vane: preload of the spring over its full torque")
    .option("--film-coefficient <share>", "film: residual error for a kelvin, such as 0.05%")
    .option("--wire-diameter <length>", "wire: with length, overheat, bore and flow its residual error is told")
    .option("--wire-length <length>", "wire")
    .option("--overheat <kelvin>", 'wire: above the air, such as "120 K"')
    .option("--bore <length>", "wire: of its tube; as in the engine file if left out")
    .option("--flow <flow>", "wire: at which it is told; half of the curve's largest if left out");
  return withMeter(command).action((path: string | undefined, options: Outputs & Meter & AmbientOptions) => {
    const input = path === undefined ? null : readTextInput(path);
    const { kind, meter: id } = options;
    const file = input === null ? null : { name: input.file.name, text: input.text };
    const work = () => alone(meterAmbient({ file, kind, meter: id, options, toolVersion }));
    return finish({ inputs: input === null ? [] : [input.file], options, work });
  });
}

function addFit(meter: Command, toolVersion: string): Command {
  type Options = Outputs & { law?: keyof typeof FIT_LAWS; sd?: string; curveOut?: string; csvOut?: string };
  return meter
    .command("fit")
    .description("fit a curve to bench points, the law chosen by evidence")
    .argument("<file>", "bench points (CSV or airtally-bench-points/1) or a bench sheet (airtally-bench-sheet/1)")
    .addOption(new Option("--law <law>", "this law alone").choices(Object.keys(FIT_LAWS)))
    .option("--sd <uncertainty>", 'of every flow, such as "1 %" or "0.1 g/s", in place of what the file says')
    .option("--curve-out <file>", "write the curve (airtally-curve/1)")
    .option("--csv-out <file>", "write the curve as CSV")
    .action((path: string, options: Options) => {
      const { text, file } = readTextInput(path);
      const { law, sd, curveOut, csvOut } = options;
      const work = () => {
        const fit = meterFit({ file: { name: file.name, text }, law, sd, toolVersion });
        return fit.ok ? success({ sheet: fit.value.sheet, files: [fit.value.curveJson, fit.value.curveCsv] }) : fit;
      };
      return finish({ inputs: [file], options, outs: [curveOut, csvOut], work });
    });
}

function addBench(meter: Command, toolVersion: string): Command {
  return meter
    .command("bench")
    .description("work out a flow-bench sheet: the flow of each row with its uncertainty budget")
    .argument("<sheet>", "bench sheet (airtally-bench-sheet/1)")
    .option("--points-out <file>", "write the points as CSV, for airtally meter fit")
    .action((path: string, options: Outputs & { pointsOut?: string }) => {
      const { text, file } = readTextInput(path);
      const work = () => {
        const bench = meterBench({ file: { name: file.name, text }, toolVersion });
        return bench.ok ? success({ sheet: bench.value.sheet, files: [bench.value.pointsCsv] }) : bench;
      };
      return finish({ inputs: [file], options, outs: [options.pointsOut], work });
    });
}

function withMeter(command: Command): Command {
  return command
    .addOption(
      new Option("--kind <kind>", "kind of the meter; an engine file says it").choices([
        "vane",
        "vortex",
        "hot-wire",
        "hot-film",
      ]),
    )
    .addOption(new Option("--meter <id>", "which meter of the engine file").choices(["meter", "meter-2"]));
}

function withAir(command: Command): Command {
  return command
    .option("--pressure <pressure>", 'of the air at the meter, absolute, such as "95 kPa"')
    .option("--temperature <temperature>", 'of the air at the meter, such as "30 degC"')
    .option("--humidity <share>", "relative; dry if left out");
}

function alone(result: Result<MeterResult>): Result<Answer> {
  return result.ok ? success({ sheet: result.value, files: [] }) : result;
}

/** Outputs are checked before any work is done, and nothing is written unless all of it went well. */
async function finish({ inputs, options, outs = [], work }: Task): Promise<void> {
  const paths = [options.json, options.report, ...outs];
  const [json, report, ...more] = planOutputs(paths, inputs, options.force === true);
  const answer = work();
  if (!answer.ok) throw endOf(answer, inputs[0]?.path);
  const { sheet, files } = answer.value;
  for (const [i, out] of more.entries()) out?.write(files[i]!);
  json?.write(`${JSON.stringify(sheet, null, 2)}\n`);
  const { renderMeterHtml, renderMeterText } = await import("../../../src/report/index.ts");
  report?.write(renderMeterHtml({ result: sheet, date: today() }));
  if (!paths.includes("-"))
    process.stdout.write(renderMeterText(sheet, { width: Math.min(process.stdout.columns ?? 96, 110) }));
}

/** An option that is off is the call's fault (2), all else the file's (3). */
function endOf(failure: Failure, path: string | undefined): CliError {
  return failure.reason === "option-invalid"
    ? new CliError(2, `${failure.message} ${failure.remedy}`)
    : unusable(failure, path);
}
