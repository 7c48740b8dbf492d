/** The thread in which the local app's checks are done: the service of edge/service.ts, asked by messages. */
import { parentPort, workerData } from "node:worker_threads";
import { appService } from "./service.ts";
import type { ThreadJob } from "./threaded-service.ts";

const service = appService(workerData as string);
parentPort?.on("message", async (job: ThreadJob) => parentPort?.postMessage(await answerTo(job)));

function answerTo(job: ThreadJob) {
  switch (job.kind) {
    case "check":
      return service.check(job.request);
    case "describe":
      return service.describe(job.recording, job.channelsText);
    case "demo":
      return service.demo();
  }
}
