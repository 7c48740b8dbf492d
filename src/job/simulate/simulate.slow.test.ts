import { it } from "vitest";
import { PROTOCOL_NAMES } from "./protocols.ts";
import { expectSensible } from "./test-support/sensible-options.ts";

it("gives a value or a typed reason for any sensible options in any protocol, up to three faults of any size at once", () => {
  expectSensible(300, PROTOCOL_NAMES);
}, 300_000);
