/** The local app's server as one hono app: routes over the service handed in, and the built page. Listening is listen.ts. */
import { serveStatic } from "@hono/node-server/serve-static";
import { Hono } from "hono";
import { bodyLimit } from "hono/body-limit";
import { failure } from "../../src/quantities/index.ts";
import { renderReportHtml } from "../../src/report/index.ts";
import type { AboutAnswer, CheckAnswer, DemoAnswer, DescribeAnswer, EngineTemplateAnswer } from "./contract.ts";
import { errorAnswer } from "./error-answer.ts";
import { onlyThisMachine } from "./only-this-machine.ts";
import { readUpload } from "./read-upload.ts";
import { recentOutcomes } from "./recent-outcomes.ts";
import { secureHeaders } from "./secure-headers.ts";
import type { AppService } from "./service.ts";

export type AppOptions = {
  readonly service: AppService;
  readonly version: string;
  /** the built web app; null serves the API alone */
  readonly staticFolder: string | null;
  readonly uploadLimit_bytes?: number;
  /** where an unexpected fault is told, with its stack; the answer carries none */
  readonly onFault?: (error: Error) => void;
};

export const UPLOAD_LIMIT_BYTES = 512 * 1024 * 1024;

const DEMO_ID = "demo";

export function createApp({ service, version, staticFolder, ...rest }: AppOptions): Hono {
  const limit = rest.uploadLimit_bytes ?? UPLOAD_LIMIT_BYTES;
  const recent = recentOutcomes();
  const app = new Hono();
  app.use(secureHeaders);
  app.use(onlyThisMachine);

  app.get("/api/about", (c) => {
    const answer: AboutAnswer = { version, uploadLimit_bytes: limit, quantities: service.quantities() };
    return c.json(answer);
  });

  app.get("/api/engine-template", (c) => {
    const answer: EngineTemplateAnswer = { text: service.engineTemplate() };
    return c.json(answer);
  });

  let demo: DemoAnswer | null = null;
  const makeDemo = onceAtATime(async () => service.demo());
  app.get("/api/demo", async (c) => {
    if (demo === null) {
      const answered = await makeDemo();
      if (!answered.ok) return errorAnswer(c, 500, answered);
      demo = { id: DEMO_ID, ...answered.value };
    }
    return c.json(demo);
  });

  const limited = bodyLimit({
    maxSize: limit,
    onError: (c) =>
      errorAnswer(
        c,
        413,
        failure(
          "too-large",
          `The upload is larger than ${Math.floor(limit / 2 ** 20)} MiB.`,
          "Send fewer recordings at once, or check large ones on the command line (airtally check).",
        ),
      ),
  });

  app.post("/api/describe", limited, async (c) => {
    const upload = await readUpload(c);
    if (!upload.ok) return errorAnswer(c, 400, upload);
    const { recordings, channelsText } = upload.value;
    const answer: DescribeAnswer = {
      recordings: await Promise.all(
        recordings.map((recording) => service.describe(recording, channelsText, c.req.raw.signal)),
      ),
    };
    return c.json(answer);
  });

  app.post("/api/check", limited, async (c) => {
    const upload = await readUpload(c);
    if (!upload.ok) return errorAnswer(c, 400, upload);
    const { recordings, engineText, channelsText } = upload.value;
    if (engineText === null) {
      return errorAnswer(c, 400, failure("no-engine", "No engine was described.", "Fill in what is known of it."));
    }
    const checked = await service.check({ recordings, engineText, channelsText }, c.req.raw.signal);
    if (!checked.ok) return errorAnswer(c, 422, checked);
    const answer: CheckAnswer = { id: recent.keep(checked.value), outcome: checked.value };
    return c.json(answer);
  });

  app.get("/api/reports/:id", (c) => {
    const id = c.req.param("id");
    const outcome = id === DEMO_ID ? demo?.outcome : recent.find(id);
    if (outcome === undefined) {
      return errorAnswer(
        c,
        404,
        failure("no-such-report", "This answer is no longer kept.", "Run the check again, then save the report."),
      );
    }
    const { title, complaint, date } = c.req.query();
    c.header("content-disposition", 'attachment; filename="airtally-report.html"');
    return c.html(renderReportHtml({ outcome, title, complaint, date }));
  });

  app.all("/api/*", (c) =>
    errorAnswer(c, 404, failure("no-such-address", `There is no ${c.req.method} ${c.req.path}.`, "Reload the page.")),
  );
  if (staticFolder !== null) app.get("*", serveStatic({ root: staticFolder }));
  app.notFound((c) =>
    errorAnswer(c, 404, failure("not-found", `${c.req.path} is not here.`, "Open the start page: /")),
  );
  app.onError((error, c) => {
    rest.onFault?.(error);
    return errorAnswer(
      c,
      500,
      failure(
        "fault",
        "The tool itself failed; your recordings are unchanged.",
        "Try again; if it fails again, please report it with what the terminal shows.",
      ),
    );
  });
  return app;
}

/** Two who ask at the same time share one answer. */
function onceAtATime<Value>(work: () => Promise<Value>): () => Promise<Value> {
  let running: Promise<Value> | null = null;
  return () => {
    running ??= work().finally(() => {
      running = null;
    });
    return running;
  };
}
