/** Five good recordings in invented layouts: what the damage is done to. Small, so that every byte can be tried. */
export type GoodFile = {
  readonly name: string;
  readonly delimiter: string;
  readonly decimal: "." | ",";
  readonly text: string;
};

const rows = (count: number, make: (i: number) => string): string[] => Array.from({ length: count }, (_, i) => make(i));
const speed = (i: number) => 800 + ((i * 37) % 90);

export const GOOD_FILES: readonly GoodFile[] = [
  {
    name: "plain, units in brackets",
    delimiter: ",",
    decimal: ".",
    text: `${["Time [s],Engine Speed [1/min],Manifold Pressure [kPa],Air Mass Flow [g/s]", ...rows(30, (i) => `${(i / 10).toFixed(1)},${speed(i)},${30 + (i % 7)}.5,${(3 + (i % 5) / 8).toFixed(3)}`)].join("\n")}\n`,
  },
  {
    name: "semicolons, decimal commas, a row of units, preamble",
    delimiter: ";",
    decimal: ",",
    text: `${["Pruefstand erfunden", "Zeit;Drehzahl;Saugrohrdruck;Lambda", "s;1/min;mbar;-", ...rows(30, (i) => `${(i / 10).toFixed(1)};${speed(i)};${300 + i};1,0${i % 4}`.replaceAll(".", ","))].join("\r\n")}\r\n`,
  },
  {
    name: "tabs, clock, missing cells",
    delimiter: "\t",
    decimal: ".",
    text: `${["Clock\tRPM\tIAT (degC)\tMAF (g/s)", ...rows(30, (i) => `10:00:${String(i).padStart(2, "0")}.5\t${speed(i)}\t${i % 4 === 0 ? "" : 21 + (i % 3)}\t${(3 + (i % 5) / 8).toFixed(2)}`)].join("\n")}\n`,
  },
  {
    name: "states and words",
    delimiter: ",",
    decimal: ".",
    text: `${["t,Fuel system status,Short term fuel trim [%],Coolant [degC]", ...rows(30, (i) => `${i},${i < 9 ? "open" : "closed"},${i % 6 === 5 ? "n/a" : (((i * 3) % 7) - 3).toFixed(2)},${60 + i}`)].join("\n")}\n`,
  },
  {
    name: "many digits, trailing delimiter, carriage returns",
    delimiter: ";",
    decimal: ".",
    text: `${["time;load;pressure;temperature;", ...rows(30, (i) => `${1795514400 + i * 5};${(25 + i / 3).toPrecision(17)};${(40 + i / 7).toPrecision(17)};${(20 + i / 9).toPrecision(17)};`)].join("\r")}\r`,
  },
];
