/** Sections of what the air does to a meter: pictures side by side, tables, this kind of meter. */

import type { AmbientSheet } from "../../../job/meter-result.ts";
import type { Section } from "../../sections/numbered-sections.tsx";
import { formatNumber, formatPercent, withUnit } from "../../words/number-words.ts";
import { readingColumns, tellCurveAir, tellLambda, tellReading } from "../meter-words.ts";
import { AmbientPanels } from "./ambient-panels.tsx";
import { Facts } from "./facts.tsx";
import { NumberTable } from "./number-table.tsx";

export function ambientSections(result: AmbientSheet): readonly Section[] {
  return [
    { id: "picture", title: "Mass read against true mass", body: <Picture result={result} /> },
    { id: "tables", title: "In numbers", body: <Tables result={result} /> },
    { id: "facts", title: "This kind of meter", body: <Facts facts={result.facts} /> },
  ];
}

function Picture({ result }: { readonly result: AmbientSheet }) {
  return (
    <>
      <p className="lead">
        How far the reading is off, where it was right in air of {tellCurveAir(result.curveAir)}. Above nought the
        engine computer counts too much air: rich, until the closed loop corrects it; at full load nothing does.
      </p>
      <AmbientPanels result={result} />
    </>
  );
}

function Tables({ result }: { readonly result: AmbientSheet }) {
  const { altitude, heat, humidity, tilt } = result;
  const columns = readingColumns(result);
  return (
    <div className="meter-tables">
      <NumberTable
        name="Altitude"
        title="Altitude"
        head={["height", ...columns, "pressure, kPa", "air, °C"]}
        rows={altitude.map((row) => [
          withUnit(formatNumber(row.altitude_m ?? 0, 4), "m"),
          ...row.readings.map(tellReading),
          formatNumber(row.pressure_kPa),
          formatNumber(row.temperature_degC),
        ])}
      />
      <NumberTable
        name="Heat"
        title="Heat"
        head={["air", ...columns]}
        rows={heat.map((row) => [
          withUnit(formatNumber(row.temperature_degC), "degC"),
          ...row.readings.map(tellReading),
        ])}
      />
      <NumberTable
        name="Humidity"
        title="Humidity"
        head={["humidity", "lambda over lambda meant"]}
        rows={humidity.map((row) => [formatPercent(row.relativeHumidity, false), tellLambda(row.readings.at(-1))])}
      />
      {tilt.length > 0 && (
        <NumberTable
          name="Tilt"
          title="Tilt"
          head={[
            tilt[0]?.tilt_deg === null ? "torque added" : "tilt",
            ...(tilt[0]?.readings ?? []).map((r) => `${formatPercent(r.opening, false)} open`),
          ]}
          rows={tilt.map((row) => [
            row.tilt_deg === null ? formatPercent(row.torqueError) : `${formatNumber(row.tilt_deg)}°`,
            ...row.readings.map(tellReading),
          ])}
        />
      )}
    </div>
  );
}
