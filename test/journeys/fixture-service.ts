/** A service that answers with the invented fixtures: for tests of the server and of the page, never wired to a command. */

import type { AppService } from "../../edge/server/service.ts";
import { failure, success } from "../../src/quantities/index.ts";
import { LEAK } from "../../src/report/fixtures/leak.ts";

export const FIXTURE_SERVICE: AppService = {
  check: ({ recordings }) => {
    const empty = recordings.find((r) => r.bytes.length === 0);
    if (empty === undefined) return success(LEAK);
    return failure("empty-file", "The file holds nothing.", "Save the recording again.", { file: empty.name });
  },
  describe: (recording) =>
    recording.bytes.length === 0
      ? failure("empty-file", "The file holds nothing.", "Save the recording again.", { file: recording.name })
      : success({
          name: recording.name,
          rows: 5000,
          duration_s: 553,
          channels: LEAK.view.channels[0] ?? [],
          warnings: [],
        }),
  demo: () =>
    success({
      title: "Invented saloon, 2.0 L petrol, hot-wire meter",
      complaint: "Hunts at idle, engine lamp on.",
      note: "Demo: an invented engine with an invented leak. Nothing here was measured.",
      engineText: '{ "format": "airtally-engine/1" }',
      outcome: LEAK,
    }),
  engineTemplate: () => '{ "format": "airtally-engine/1" }\n',
  quantities: () => [
    { id: "meterFlow", name: "air meter, mass flow", units: ["g/s", "kg/h"], banked: true },
    { id: "manifoldPressure", name: "manifold pressure", units: ["kPa", "mbar"], banked: false },
  ],
};
