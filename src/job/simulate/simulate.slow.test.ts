import { it } from "vitest";
import { expectSensible } from "../../../test/whole-path/sensible-simulations.ts";
import { PROTOCOL_NAMES } from "./protocols.ts";

it("gives a value or a typed reason for any sensible options in any protocol, up to three faults of any size at once", () => {
  expectSensible(100, PROTOCOL_NAMES);
}, 300_000);
