/** Invented meters and benches for the tests beside: no figure here is of a real part. */
import { engineTemplate } from "../../engine-file/engine-template.ts";

/** hot wire of 7 points, 0.98 to 4.4 V, taken at 101.325 kPa and 20 degC; site of 98.9 kPa and 12 degC */
export const ENGINE = engineTemplate();

export const CURVE_CSV = `# air: 101325 Pa, 293.15 K
signal [V],flow [g/s],sd [g/s]
1,2,0.02
2,20,0.1
3,70,0.4
4,180,1
`;

/** a vortex meter: 2 L/s per 100 Hz, straight */
export const VORTEX_CSV = `# air: 100000 Pa, 300 K
signal [Hz],flow [L/s]
50,1
500,10
2000,40
`;

/** s^2 = 0.6 + 10 m^0.5 (m in kg/s), an invented wire, exactly */
export function kingSignal(flow_g_per_s: number): number {
  return Math.sqrt(0.6 + 10 * Math.sqrt(flow_g_per_s / 1000));
}

export function kingPointsCsv(withSd = true): string {
  const rows = [2, 5, 10, 20, 40, 70, 110, 160].map((flow) =>
    [kingSignal(flow).toFixed(6), flow, ...(withSd ? [0.01 * flow] : [])].join(","),
  );
  return `signal [V],flow [g/s]${withSd ? ",sd [g/s]" : ""}\n${rows.join("\n")}\n`;
}

type Json = { [key: string]: unknown };

export function benchSheet(changes: Json = {}): Json {
  const drops = [200, 500, 1000, 2000, 4000];
  return {
    format: "airtally-bench-sheet/1",
    note: "an invented bench",
    reference: { kind: "orifice-plate", taps: "corner", pipeDiameter: "100 mm", boreDiameter: "60 mm" },
    at: { pressure: "99.8 kPa", temperature: "22 degC" },
    uncertainties: {
      pressure: "50 Pa",
      temperature: "0.3 K",
      pressureDrop: "4 Pa",
      humidity: "3 %",
      bore: "0.02 %",
      leak: "0.1 %",
      signal: "2 mV",
    },
    rows: drops.map((drop, i) => ({
      pressure: "100.2 kPa",
      temperature: "22 degC",
      pressureDrop: `${drop} Pa`,
      humidity: "45 %",
      signal: `${(1.8 + 0.3 * i).toFixed(2)} V`,
    })),
    ...changes,
  };
}

/** Rows of the sheet with something laid over each. */
export function rowsWith(changes: Json): Json[] {
  return (benchSheet().rows as Json[]).map((row) => {
    const merged = { ...row, ...changes };
    return Object.fromEntries(Object.entries(merged).filter(([, value]) => value !== undefined));
  });
}
