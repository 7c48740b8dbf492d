import { describe, expect, test } from "vitest";
import { type Recording, readRecording } from "./index.ts";

/** All of the layouts here are invented. */
const bytesOf = (text: string) => new TextEncoder().encode(text);
const latin1 = (text: string) => Uint8Array.from(text, (c) => c.charCodeAt(0));

function read(input: string | Uint8Array, rate?: number): Recording {
  const bytes = typeof input === "string" ? bytesOf(input) : input;
  const result = readRecording(bytes, { name: "invented.csv", ...(rate === undefined ? {} : { rate }) });
  if (!result.ok) throw new Error(`${result.reason}: ${result.message}`);
  return result.value;
}

const valuesOf = (recording: Recording, header: string) => {
  const column = recording.columns.find((c) => c.header === header);
  if (column === undefined)
    throw new Error(`no column ${header} in ${recording.columns.map((c) => c.header).join("|")}`);
  return [...column.values];
};
const unitOf = (recording: Recording, header: string) => recording.columns.find((c) => c.header === header)?.unitText;

describe("delimiters and decimal marks", () => {
  for (const [name, delimiter] of [
    ["comma", ","],
    ["semicolon", ";"],
    ["tab", "\t"],
    ["bar", "|"],
    ["spaces", "   "],
  ] as const) {
    test(`a table parted by ${name} is read`, () => {
      const rows = [
        ["Time", "RPM", "MAP"],
        ["0.0", "800.5", "33"],
        ["0.1", "812", "34"],
        ["0.2", "808", "33"],
      ];
      const recording = read(rows.map((row) => row.join(delimiter)).join("\n"));
      expect(valuesOf(recording, "RPM")).toEqual([800.5, 812, 808]);
      expect(recording.time?.seconds[2]).toBeCloseTo(0.2);
    });
  }

  test("a decimal comma beside semicolons is a decimal comma, also in the time", () => {
    const recording = read(
      "Zeit [s];Drehzahl [1/min];Saugrohrdruck [mbar]\n0,0;812,5;331\n0,1;815,25;330\n0,2;809;332\n",
    );
    expect(valuesOf(recording, "Drehzahl")).toEqual([812.5, 815.25, 809]);
    expect([...recording.time!.seconds]).toEqual([0, 0.1, 0.2]);
    expect(recording.decimalMark).toBe(",");
  });

  test("points between groups of three are thousands marks where the column has decimal commas", () => {
    const recording = read("t [s];n [1/min];x\n0,0;1.234,5;1\n0,1;12.345,5;2\n0,2;987,5;3\n");
    expect(valuesOf(recording, "n")).toEqual([1234.5, 12345.5, 987.5]);
  });

  test("commas between groups of three are thousands marks in quoted cells", () => {
    const recording = read('time,rpm,map\n0.0,"1,234.5",33\n0.1,"1,250.0",34\n0.2,"998.5",34\n');
    expect(valuesOf(recording, "rpm")).toEqual([1234.5, 1250, 998.5]);
  });

  test("apostrophes and narrow spaces between groups are thousands marks", () => {
    expect(valuesOf(read("t;n\n0;1'234.5\n1;999\n2;2'000\n"), "n")).toEqual([1234.5, 999, 2000]);
    expect(valuesOf(read("t;n\n0;1\u202f234,5\n1;999\n2;2\u00a0000\n"), "n")).toEqual([1234.5, 999, 2000]);
  });

  test("columns of one file may have different decimal marks", () => {
    const recording = read("t;a;b\n0;1,5;1.25\n1;2,5;1.5\n2;3,5;2.75\n");
    expect(valuesOf(recording, "a")).toEqual([1.5, 2.5, 3.5]);
    expect(valuesOf(recording, "b")).toEqual([1.25, 1.5, 2.75]);
  });

  test("a comma that is decimal mark and delimiter at once is refused, naming the line", () => {
    const result = readRecording(bytesOf("t,n,p\n0,0,812,5,33,1\n0,1,815,2,33,4\n0,2,809,9,33,0\n"), { name: "x.csv" });
    expect(result).toMatchObject({ ok: false, reason: "ambiguous-layout", where: { file: "x.csv", line: 1 } });
  });

  test("a trailing delimiter on the rows, or on header and rows, adds no column", () => {
    expect(read("a,b\n1,2,\n3,4,\n5,6,\n").columns).toHaveLength(2);
    expect(read("a;b;\n1;2;\n3;4;\n5;6;\n").columns).toHaveLength(2);
  });
});

describe("headers and units", () => {
  test("units stand in brackets, parentheses, after a comma, after a word or in a row of their own", () => {
    const square = read("Time [s],Speed [km/h]\n0,1\n1,2\n2,3\n");
    expect(unitOf(square, "Speed")).toBe("km/h");
    expect(unitOf(read("Time (s);Speed (km/h)\n0;1\n1;2\n2;3\n"), "Speed")).toBe("km/h");
    expect(unitOf(read("Time, s;Speed, km/h\n0;1\n1;2\n2;3\n"), "Speed")).toBe("km/h");
    expect(unitOf(read("Zeit in s;Druck in kPa\n0;1\n1;2\n2;3\n"), "Druck")).toBe("kPa");
    const row = read("Time;Speed;State\ns;km/h;-\n0;1;2\n1;2;2\n2;3;2\n");
    expect(unitOf(row, "Speed")).toBe("km/h");
    expect(unitOf(row, "State")).toBeNull();
    expect(row.rows).toBe(3);
    expect(unitOf(read("Time;Speed\n[s];[km/h]\n0;1\n1;2\n2;3\n"), "Speed")).toBe("km/h");
  });

  test("empty brackets are no unit, and words in parentheses belong to the name", () => {
    const recording = read("RUN_TIME (),LAMBDA (BANK 1) (),X\n0,1,1\n1,1,2\n2,1,3\n", 1);
    expect(recording.columns.map((c) => c.unitText)).toEqual([null, null, null]);
    expect(recording.columns[1]?.header).toContain("BANK 1");
  });

  test("a unit glued to the values is taken off and kept as the unit", () => {
    const recording = read("Time,RPM,Temp\n0.0,850 rpm,21.5 °C\n0.1,861 rpm,21.5 °C\n0.2,n/a,22 °C\n");
    expect(valuesOf(recording, "RPM").slice(0, 2)).toEqual([850, 861]);
    expect(unitOf(recording, "RPM")).toBe("rpm");
    expect(unitOf(recording, "Temp")).toBe("°C");
    expect(valuesOf(recording, "Temp")[2]).toBe(22);
  });

  test("two rows of names are joined, the first filled to the right", () => {
    const recording = read(
      "Engine;;Air;\nTime;Speed;Mass;Temp\ns;1/min;g/s;degC\n0;800;3.5;21\n1;810;3.6;21\n2;805;3.5;21\n",
    );
    expect(recording.columns.map((c) => c.header)).toEqual(["Engine Time", "Engine Speed", "Air Mass", "Air Temp"]);
    expect(unitOf(recording, "Air Mass")).toBe("g/s");
  });

  test("a quoted name may hold line ends", () => {
    const recording = read('"Time\n[s]","Engine\nspeed\n[1/min]",State\n0,800,1\n1,810,1\n2,805,1\n');
    expect(recording.columns.map((c) => [c.header, c.unitText])).toEqual([
      ["Time", "s"],
      ["Engine speed", "1/min"],
      ["State", null],
    ]);
    expect([...recording.lines]).toEqual([5, 6, 7]);
  });

  test("remarks that a spreadsheet padded to the width of the table are neither rows nor group names", () => {
    const recording = read(
      "Pruefling;erfunden;;;\nHubraum;1998;;;\nDatum;24.11.2026;;;\n\nt [s];n;p;T;U\n0;800;33;20;12\n1;810;34;20;12\n2;805;33;20;12\n",
    );
    expect(recording.columns.map((c) => c.header)).toEqual(["t", "n", "p", "T", "U"]);
    expect(valuesOf(recording, "n")).toEqual([800, 810, 805]);
    expect(recording.preamble.map((l) => l.line)).toEqual([1, 2, 3]);
  });

  test("lines before the header are kept as text, comment lines anywhere too", () => {
    const recording = read(
      "Invented logger 3.1\nDisplacement;1998 cm3\n\nt;n;p\n0;800;33\n# gear 2\n1;810;34\n2;805;33\n",
    );
    expect(recording.preamble.map((l) => [l.line, l.text])).toEqual([
      [1, "Invented logger 3.1"],
      [2, "Displacement;1998 cm3"],
      [6, "# gear 2"],
    ]);
    expect(recording.headerLine).toBe(4);
    expect([...recording.lines]).toEqual([5, 7, 8]);
  });

  test("a header behind a comment mark counts where there is no other", () => {
    expect(valuesOf(read("# t,n,p\n0,800,33\n1,810,34\n2,805,33\n"), "n")).toEqual([800, 810, 805]);
  });

  test("a table without names is read, columns known by number, and that is said", () => {
    const recording = read("0,800,33\n1,810,34\n2,805,33\n", 10);
    expect(recording.columns).toHaveLength(3);
    expect(recording.warnings.map((w) => w.code)).toContain("no-header");
  });
});

describe("headers that do not fit their rows", () => {
  test("a header with fewer or more names than the rows have cells is refused, so that no column gets its neighbour's name", () => {
    for (const header of ["t,n-p", "t,n,p,T,x"]) {
      const result = readRecording(bytesOf(`${header}\n0,800,33\n1,810,34\n2,820,35\n`), { name: "x.csv" });
      expect(result).toMatchObject({ ok: false, reason: "ambiguous-layout", where: { line: 1 } });
    }
  });

  test("a row of units of another length than the names is left out, and that is said", () => {
    const recording = read("t;n;p\ns;1/min\n0;800;33\n1;810;34\n2;820;35\n");
    expect(recording.columns.map((c) => c.unitText)).toEqual([null, null, null]);
    expect(recording.warnings.map((w) => w.code)).toContain("units-left-out");
  });
});

describe("encodings", () => {
  const text = "Zeit [s];Kühlmitteltemperatur [°C]\n0;88\n1;89\n2;89\n";
  const name = "Kühlmitteltemperatur";
  const utf16 = (mark: boolean, little: boolean) => {
    const units = [...(mark ? [0xfeff] : []), ...Array.from(text, (c) => c.charCodeAt(0))];
    return Uint8Array.from(units.flatMap((u) => (little ? [u & 255, u >> 8] : [u >> 8, u & 255])));
  };
  for (const [title, bytes, encoding] of [
    ["UTF-8", bytesOf(text), "utf-8"],
    ["UTF-8 with mark", bytesOf(`\ufeff${text}`), "utf-8"],
    ["Latin-1", latin1(text), "windows-1252"],
    ["UTF-16 little-endian with mark", utf16(true, true), "utf-16le"],
    ["UTF-16 big-endian with mark", utf16(true, false), "utf-16be"],
    ["UTF-16 little-endian without mark", utf16(false, true), "utf-16le"],
    ["UTF-16 big-endian without mark", utf16(false, false), "utf-16be"],
  ] as const) {
    test(`${title} is read`, () => {
      const recording = read(bytes);
      expect(recording.encoding).toBe(encoding);
      expect(unitOf(recording, name)).toBe("°C");
      expect(valuesOf(recording, name)).toEqual([88, 89, 89]);
    });
  }

  test("a degree sign that was encoded twice, or three times, is a degree sign", () => {
    const twice = (s: string) => new TextDecoder("latin1").decode(bytesOf(s));
    expect(unitOf(read(twice(text)), name)).toBe("°C");
    expect(unitOf(read(twice(twice(text))), name)).toBe("°C");
  });

  test("NUL bytes in a line are left out and said", () => {
    const recording = read("t,n\n0,800\n1,8\u000010\n2,820\n3,830\n4,840\n5,850\n6,860\n7,870\n8,880\n9,890\n10,900\n");
    expect(valuesOf(recording, "n")[1]).toBe(810);
    expect(recording.warnings.map((w) => w.code)).toContain("nul-bytes");
  });

  test("lines may end with CR, LF, both, or a mixture", () => {
    for (const text of [
      "t,n\r0,800\r1,810\r2,820\r",
      "t,n\r\n0,800\r\n1,810\r\n2,820",
      "t,n\n0,800\r\n1,810\r2,820\n",
    ]) {
      expect(valuesOf(read(text), "n")).toEqual([800, 810, 820]);
    }
  });
});

describe("cells that are no numbers", () => {
  test("words of absence are missing, other words are kept beside the column and reported", () => {
    const recording = read("t,p\n0,33\n1,n/a\n2,---\n3,\n4,Inf\n5,OVR\n6,35\n7,35\n8,36\n");
    const column = recording.columns[1]!;
    expect([...column.quality]).toEqual([0, 1, 1, 1, 6, 6, 0, 0, 0]);
    expect(column.texts?.dictionary).toEqual(["Inf", "OVR"]);
    expect(recording.warnings.find((w) => w.code === "words-among-numbers")?.text).toContain('"p" (column 2)');
  });

  test("a column of states is kept as words", () => {
    const recording = read("t,loop,n\n0,open,800\n1,closed,810\n2,closed,820\n3,open,815\n");
    const { texts } = recording.columns[1]!;
    expect([...texts!.words].map((w) => texts!.dictionary[w])).toEqual(["open", "closed", "closed", "open"]);
    expect(valuesOf(recording, "n")).toEqual([800, 810, 820, 815]);
  });

  test("NaN stands only beside a quality code", () => {
    const recording = read("t,p\n0,33\n1,x\n2,\n3,1e999\n4,34\n");
    for (const column of recording.columns) {
      expect([...column.values].map(Number.isNaN)).toEqual([...column.quality].map((code) => code !== 0));
    }
  });
});

describe("rows that do not fit", () => {
  test("short and long rows are left out with their lines named, the others keep their values", () => {
    const recording = read("t,n,p\n0,800,33\n1,810\n2,820,35\n3,830,36,7\n4,840,37\n");
    expect(valuesOf(recording, "n")).toEqual([800, 820, 840]);
    expect(recording.warnings.map((w) => w.text).join(" ")).toMatch(
      /fewer than 3 cells.*line 3.*more than 3 cells.*line 5/,
    );
  });

  test("where rows are short by habit, the columns beyond their end are missing", () => {
    const rows = ["t,a,b,c", "0,1", "1,1,2", "2,1,2,3", "3,1,2,3", "4,1", "5,1,2,3", "6,1,2", "7,1,2,3", "8,1,2,3"];
    expect(valuesOf(read(rows.join("\n")), "c").map((v) => (Number.isNaN(v) ? null : v))).toEqual([
      null,
      null,
      3,
      3,
      null,
      3,
      null,
      3,
      3,
    ]);
  });

  test("a file cut within a row is read up to the cut; the cell that may be cut is not taken", () => {
    const recording = read("t,n,p\n0,800,33\n1,810,34\n2,820,35\n3,84");
    expect(valuesOf(recording, "t")).toEqual([0, 1, 2, 3]);
    expect(valuesOf(recording, "n")[3]).toBeNaN();
    expect(recording.warnings).toEqual([
      { code: "cut", text: "The file ends within a row (line 5): read up to the cut." },
    ]);
  });

  test("remarks between the rows, also right below the names, are neither names nor tables", () => {
    const remark = "Event;door opened;;;";
    const recording = read(
      `t;n;p;T;U\n${remark}\n0;800;33;20;12\n1;810;34;20;12\n${remark}\n2;805;33;20;12\n3;806;33;20;12\n4;805;33;20;12\n`,
    );
    expect(recording.columns.map((c) => c.header)).toEqual(["t", "n", "p", "T", "U"]);
    expect(valuesOf(recording, "n")).toEqual([800, 810, 805, 806, 805]);
    expect(recording.warnings.find((w) => w.code === "no-values")?.text).toContain("line 5");
  });

  test("rows of a summary at the end are no samples", () => {
    const recording = read("t;n;p\n0;800;33\n1;810;34\n2;805;33\nMax;810;34\nMin;800;33\n");
    expect([...recording.columns[1]!.quality]).toEqual([0, 0, 0, 1, 1]);
    expect(recording.warnings.find((w) => w.code === "time-worded")?.text).toMatch(/2 rows.*lines 5, 6/);
  });

  test("a repeated header splits the recording", () => {
    const recording = read("t,n\n0,800\n1,810\n2,820\nt,n\n0,900\n1,910\n2,920\n");
    expect(valuesOf(recording, "n")).toEqual([800, 810, 820, 900, 910, 920]);
    expect(recording.stretches.map((s) => s.startRow)).toEqual([0, 3]);
    expect([...recording.time!.seconds]).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

describe("what stands between and below the rows", () => {
  test("a header printed again on every page does not split a recording whose time runs on", () => {
    const recording = read("t,n\n0,800\n1,810\n2,820\nt,n\n3,900\n4,910\n5,920\n");
    expect(recording.stretches).toHaveLength(1);
    expect(recording.warnings.map((w) => w.code)).toContain("header-again");
  });

  test("a summary below the rows is no row", () => {
    const recording = read("t,n,p\n0,800,33\n1,810,34\n2,820,35\n\nSummary\nChannel,Min,Max\nn,800,820\np,33,35\n");
    expect(valuesOf(recording, "n")).toEqual([800, 810, 820]);
  });
});

describe("several tables and long format", () => {
  test("a second table with other columns goes on below the first, cells it lacks are missing", () => {
    const recording = read("t,n,p\n0,800,33\n1,810,34\n2,820,35\n\nt,n,T\n10,900,21\n11,910,22\n12,920,23\n");
    expect(valuesOf(recording, "n")).toEqual([800, 810, 820, 900, 910, 920]);
    expect(valuesOf(recording, "T").slice(3)).toEqual([21, 22, 23]);
    expect(valuesOf(recording, "p").slice(0, 3)).toEqual([33, 34, 35]);
    expect([...recording.columns.find((c) => c.header === "p")!.quality]).toEqual([0, 0, 0, 1, 1, 1]);
    expect(recording.stretches).toHaveLength(2);
    expect(recording.warnings.map((w) => w.code)).toContain("several-tables");
  });

  test("two tables of different channels over the same time are merged by it", () => {
    const recording = read("t,n\n0,800\n1,810\n2,820\n3,830\n\nt,T\n0.5,21\n2.5,22\n2.7,22\n2.9,22\n");
    expect([...recording.time!.seconds]).toEqual([0, 0.5, 1, 2, 2.5, 2.7, 2.9, 3]);
    expect(valuesOf(recording, "T").filter((v) => !Number.isNaN(v))).toEqual([21, 22, 22, 22]);
    expect(recording.stretches).toHaveLength(1);
  });

  test("a side table without time is left out, and that is said", () => {
    const recording = read("t,n,p\n0,800,33\n1,810,34\n2,820,35\n\nname,min,max\nn,800,820\np,33,35\nq,1,2\n");
    expect(valuesOf(recording, "n")).toEqual([800, 810, 820]);
    expect(recording.warnings.map((w) => w.code)).toContain("table-left-out");
  });

  test("long format becomes one column a channel, one row a stamp", () => {
    const recording = read(
      "time;channel;value;unit\n0,0;RPM;812;1/min\n0,0;MAP;33,5;kPa\n0,1;RPM;815;1/min\n0,2;RPM;816;1/min\n0,2;MAP;34,0;kPa\n0,3;RPM;820;1/min\n",
    );
    expect([...recording.time!.seconds]).toEqual([0, 0.1, 0.2, 0.3].map((t) => expect.closeTo(t, 9)));
    expect(valuesOf(recording, "RPM")).toEqual([812, 815, 816, 820]);
    expect(valuesOf(recording, "MAP").map((v) => (Number.isNaN(v) ? null : v))).toEqual([33.5, null, 34, null]);
    expect(unitOf(recording, "MAP")).toBe("kPa");
  });
});
