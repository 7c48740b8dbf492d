/**
 * Everything that can be said of an engine in the form: one row a line, keyed by its path in the engine file. `cost` is
 * what not knowing it costs, and is shown where the line is left empty.
 */
import { choice, type EngineField, type FieldGroup, number, option, quantity } from "./field-kinds.ts";

const fitted = [option("none"), option("fitted")];
const probe = [
  option("none"),
  option("narrow", "narrow (switches at lambda 1)"),
  option("wide", "wide (measures lambda)"),
];
const meterKinds = [
  option("vane", "vane (spring-loaded flap)"),
  option("vortex", "vortex (counts eddies)"),
  option("hot-wire", "hot wire"),
  option("hot-film", "hot film (senses direction)"),
];

export const FIELD_GROUPS: readonly FieldGroup[] = [
  {
    id: "engine",
    title: "The engine",
    fields: [
      quantity("displacement", "Displacement, all cylinders", "volume", "1998 cm3", { required: true }),
      number("cylinders", "Cylinders", "4", { required: true }),
      choice(
        "fuel",
        "Fuel",
        [
          option("petrol"),
          option("e10", "petrol with 10 % ethanol (E10)"),
          option("e85", "E85"),
          option("ethanol"),
          option("methanol"),
          option("lpg", "LPG"),
          option("cng", "CNG"),
          option("diesel"),
        ],
        { required: true },
      ),
      choice(
        "metering",
        "What the engine computer doses fuel by",
        [
          option("meter", "its air meter"),
          option("pressure", "manifold pressure"),
          option("both", "both"),
          option("pedal", "the pedal (diesel)"),
          option("unknown", "not known"),
        ],
        { required: true, help: "Trims bear witness only when this is known." },
      ),
      choice("induction", "Induction", [option("natural"), option("boosted", "boosted (turbo or blower)")], {
        cost: "taken as natural in the drawing; the recorded pressures decide.",
      }),
      choice("egr", "Exhaust gas recirculation", fitted, {
        cost: "on a diesel taken as fitted and open wherever it is not commanded shut; else it stays a possible fault.",
      }),
    ],
    more: [
      choice(
        "egrControl",
        "EGR is controlled by",
        [option("meter", "the air meter"), option("position", "its valve position"), option("unknown", "not known")],
        {
          cost: "a meter that steers the EGR is no witness while the valve is open; this cannot be allowed for.",
        },
      ),
      number("volumetricEfficiency.value", "Volumetric efficiency", "0.85", {
        cost: "a wide range is assumed: manifold pressure then tells changes well and the level badly.",
      }),
      number("volumetricEfficiency.sd", "its uncertainty (one standard deviation)", "0.05"),
      choice("banks", "Banks", [option("1", "one"), option("2", "two")], { cost: "taken as one." }),
      choice("injection", "Injection", [option("port", "into the port"), option("direct", "into the cylinder")], {
        cost: "taken as port injection: vapour displaces up to 2 % of the air.",
      }),
      choice("ignition", "Ignition", [option("spark"), option("compression")], { cost: "taken from the fuel." }),
      choice("valveTiming", "Valve timing", [option("fixed"), option("variable")], {
        cost: "breathing is then believed a little less.",
      }),
      number("compressionRatio", "Compression ratio", "10.5", { cost: "a usual one is taken for the residual gas." }),
    ],
  },
  {
    id: "meter",
    title: "The air meter",
    fields: [
      choice("meters.0.kind", "Kind of meter", meterKinds, {
        cost: "no meter is drawn. A recorded flow is used as it stands; faults that belong to one kind cannot be weighed.",
      }),
      quantity("meters.0.bore", "Bore of its tube", "length", "70 mm"),
    ],
    more: [
      {
        kind: "points",
        path: "meters.0.curve.points",
        label: "Curve: signal and flow, one pair a line",
        example: "0.98 2.1",
        cost: "needed only where the recording holds the raw signal (V, Hz, ms).",
      },
      choice("meters.0.curve.signalUnit", "Unit of the signal", [
        option("V"),
        option("Hz"),
        option("ms"),
        option("ratio", "ratio of the reference"),
      ]),
      choice(
        "meters.0.curve.flowUnit",
        "Unit of the flow",
        [option("g/s"), option("kg/h"), option("L/s"), option("m3/h")],
        {
          help: "A volume (L/s, m3/h) for a vortex meter.",
        },
      ),
      quantity("meters.0.curve.at.pressure", "Air of the curve: pressure", "pressure", "101.325 kPa", {
        help: "The air for which a vane's curve holds.",
      }),
      quantity("meters.0.curve.at.temperature", "Air of the curve: temperature", "temperature", "20 degC"),
      quantity("meters.0.reference", "Reference voltage", "voltage", "5 V"),
      choice("meters.1.kind", "Second meter", meterKinds),
    ],
  },
  {
    id: "fuel",
    title: "Fuel and mixture",
    fields: [
      choice("lambdaProbe", "Control probe", probe, { cost: "taken as narrow unless a wide lambda is recorded." }),
      choice("independentProbe", "Probe of your own", probe, {
        help: "One that the engine computer does not read.",
        cost: "a control probe that reads wrong can then not be contradicted in closed loop.",
      }),
    ],
    more: [
      quantity("trimLimits", "Limits of each trim", "ratio", "25 %", { cost: "taken as 25 %." }),
      choice("trims", "Short and long trim are", [option("multiplied"), option("added")]),
      quantity("injectors.flow", "Flow of one injector", "volumeFlow", "240 cm3/min", {
        cost: "the pulse width then tells changes of fuel, not its amount.",
      }),
      quantity("injectors.atPressure", "at a pressure of", "pressure", "300 kPa"),
      quantity("injectors.deadTime", "Dead time of the injectors", "time", "0.9 ms"),
      choice("injectors.pressureReference", "Fuel pressure is held against", [
        option("manifold", "the manifold"),
        option("ambient", "the open air"),
      ]),
      choice("purge", "Tank purge", fitted),
      choice("secondaryAir", "Secondary air", fitted),
    ],
  },
  {
    id: "site",
    title: "Place and weather",
    fields: [
      quantity("site.barometer", "Barometer", "pressure", "98.9 kPa", {
        help: "As it stood at the place, not reduced to sea level.",
        cost: "taken from the recording where it can be seen there, else sea level: 1 % for each 100 m of height.",
      }),
      quantity("site.outside", "Outside temperature", "temperature", "12 degC", {
        cost: "taken from the recording, else 20 °C.",
      }),
    ],
    more: [
      choice(
        "intakeTemperatureAt",
        "Intake temperature is measured at",
        [
          option("meter", "the meter"),
          option("manifold", "the manifold"),
          option("after-cooler", "the cooler's outlet"),
        ],
        {
          cost: "taken as near the manifold.",
        },
      ),
      quantity("manifoldVolume", "Volume of the manifold", "volume", "3.0 L"),
      quantity("chargeVolume", "Volume of the charge pipes", "volume", "5 L"),
      quantity("throttleBore", "Bore of the throttle", "length", "60 mm"),
    ],
  },
];

export const ENGINE_FIELDS: readonly EngineField[] = FIELD_GROUPS.flatMap((group) => [...group.fields, ...group.more]);
