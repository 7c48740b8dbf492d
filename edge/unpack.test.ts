import { gzipSync } from "node:zlib";
import { zipSync } from "fflate";
import { expect, it } from "vitest";
import { unpack } from "./unpack.ts";

const text = new TextEncoder().encode("time,rpm\n0,800\n1,810\n");

it("unpacks gzip and a zip of one file, and leaves other bytes as they are", () => {
  for (const packed of [gzipSync(text), zipSync({ "a.csv": text }), text]) {
    const found = unpack("r", packed);
    expect(found.ok && new TextDecoder().decode(found.value)).toBe("time,rpm\n0,800\n1,810\n");
  }
});

it("refuses what swells beyond the limit, before it has swollen", () => {
  const zeros = new Uint8Array(5_000_000);
  for (const packed of [gzipSync(zeros), zipSync({ "a.csv": zeros })]) {
    expect(packed.length).toBeLessThan(50_000);
    expect(unpack("r", packed, 1_000_000)).toMatchObject({ ok: false, reason: "unpack-too-large" });
  }
});

it("names the files of an archive that holds several, and refuses broken ones", () => {
  const several = unpack("r.zip", zipSync({ "a.csv": text, "b.csv": text }));
  expect(several).toMatchObject({ ok: false, reason: "unpack-not-one-file" });
  expect(!several.ok && several.message).toMatch(/a\.csv, b\.csv/);
  expect(unpack("r.gz", gzipSync(text).subarray(0, 15))).toMatchObject({ ok: false, reason: "unpack-broken" });
  expect(unpack("r.zip", zipSync({ "a.csv": text }).subarray(0, 40))).toMatchObject({
    ok: false,
    reason: "unpack-broken",
  });
});
