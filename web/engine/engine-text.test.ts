import { describe, expect, it } from "vitest";
import { engineTemplate } from "../../src/job/engine-file/engine-template.ts";
import { parseEngineFile } from "../../src/job/engine-file/parse-engine-file.ts";
import { formatPoints, parsePoints } from "./curve-points.ts";
import { ENGINE_FIELDS } from "./engine-fields.ts";
import { EMPTY_FORM, type EngineForm, engineText, readEngineText } from "./engine-text.ts";
import { fieldProblem } from "./field-problem.ts";

function read(text: string): EngineForm {
  const form = readEngineText(text, "engine.json");
  if (!form.ok) throw new Error(form.message);
  return form.value;
}

const withValue = (form: EngineForm, path: string, value: string): EngineForm => ({
  ...form,
  values: { ...form.values, [path]: value },
});

describe("engine file and form", () => {
  it("shows every line of the starting engine file, and writes it back unchanged", () => {
    const form = read(engineTemplate());
    expect(JSON.parse(engineText(form))).toEqual(JSON.parse(engineTemplate()));
    expect(form.values.displacement).toBe("1998 cm3");
    expect(form.values["meters.0.curve.points"]).toContain("0.98 2.1\n1.4 6\n");
    expect(form.values["site.barometer"]).toBe("98.9 kPa");
  });

  it("finds nothing wrong with the starting engine file", () => {
    const form = read(engineTemplate());
    const wrong = ENGINE_FIELDS.filter((field) => fieldProblem(field, form.values[field.path] ?? "") !== null);
    expect(wrong.map((field) => field.path)).toEqual([]);
  });

  it("writes a file that the check accepts from the needed lines alone", () => {
    const form = [
      ["displacement", "1970 cm3"],
      ["cylinders", "4"],
      ["fuel", "diesel"],
      ["metering", "pedal"],
      ["banks", "2"],
      ["meters.0.kind", "hot-film"],
    ].reduce((before, [path = "", value = ""]) => withValue(before, path, value), EMPTY_FORM);
    const parsed = parseEngineFile(engineText(form));
    expect(parsed.ok && [parsed.value.displacement, parsed.value.banks, parsed.value.meters[0]?.kind]).toEqual([
      0.00197,
      2,
      "hot-film",
    ]);
  });

  it("offers choices that the check knows, every one", () => {
    const base = read(engineTemplate());
    for (const field of ENGINE_FIELDS) {
      if (field.kind !== "choice" || field.path.includes("curve")) continue;
      for (const option of field.options) {
        const parsed = parseEngineFile(engineText(withValue(base, field.path, option.value)));
        // a curve drawn for one kind of meter may not suit another: that is judged, but not as an unknown word
        expect(parsed.ok || parsed.reason !== "not-valid", `${field.path} ${option.value}`).toBe(true);
      }
    }
  });

  it("removes what is emptied, with its parent where nothing else is left in it", () => {
    const form = read(engineTemplate());
    const emptied = withValue(withValue(form, "site.barometer", ""), "site.outside", " ");
    expect(JSON.parse(engineText(emptied))).not.toHaveProperty("site");
    const points = JSON.parse(engineText(withValue(form, "meters.0.curve.points", "")));
    expect(points.meters[0].curve).not.toHaveProperty("points");
    expect(JSON.parse(engineText(withValue(form, "meters.0.kind", "")))).not.toHaveProperty("meters");
  });

  it("keeps what the form does not show", () => {
    const form = read(engineTemplate());
    expect(JSON.parse(engineText(form)).manifoldSensor.points).toHaveLength(2);
    const ratio = JSON.stringify({ format: "airtally-engine/1", fuel: { stoichiometricAirFuelRatio: 14.4 } });
    expect(JSON.parse(engineText(read(ratio))).fuel).toEqual({ stoichiometricAirFuelRatio: 14.4 });
  });

  it("names the second meter", () => {
    const form = withValue(read(engineTemplate()), "meters.1.kind", "hot-film");
    expect(JSON.parse(engineText(form)).meters.map((m: { id: string }) => m.id)).toEqual(["meter", "meter-2"]);
  });

  it.each(["{", "[]", "{}", '{"format":"something-else/1"}'])("refuses %s, saying why", (text) => {
    const form = readEngineText(text, "x.json");
    expect(!form.ok && form.message).toContain('"x.json" is no engine file');
  });
});

describe("curve points", () => {
  it("are read one pair a line, and written back", () => {
    const points = parsePoints("0.98 2.1\n\n 1.4;6 \n2\t17.5\n");
    expect(points.ok && points.value).toEqual([
      [0.98, 2.1],
      [1.4, 6],
      [2, 17.5],
    ]);
    expect(points.ok && formatPoints(points.value)).toBe("0.98 2.1\n1.4 6\n2 17.5");
  });

  it("are refused with the line that is wrong", () => {
    const points = parsePoints("0.98 2.1\n1,4 6");
    expect(!points.ok && points.message).toContain('Line 2, "1,4 6"');
    expect(parsePoints("0.98 2.1").ok).toBe(false);
  });
});

describe("fieldProblem", () => {
  const field = (path: string) => {
    const found = ENGINE_FIELDS.find((f) => f.path === path);
    if (found === undefined) throw new Error(`no field ${path}`);
    return found;
  };

  it("asks for what is needed and for units, and lets the rest be empty", () => {
    expect(fieldProblem(field("displacement"), "")).toBe("This is needed.");
    expect(fieldProblem(field("displacement"), "1998")).toContain("has no unit");
    expect(fieldProblem(field("displacement"), "98 kPa")).toContain("is not a unit of volume");
    expect(fieldProblem(field("displacement"), "1998 cm3")).toBeNull();
    expect(fieldProblem(field("cylinders"), "four")).toContain("is not a number");
    expect(fieldProblem(field("site.barometer"), "")).toBeNull();
  });
});
