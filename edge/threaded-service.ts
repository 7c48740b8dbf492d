/** The service of the local app, its work done in a thread: one check after the other, and the server free for what else is asked. */
import type { Worker } from "node:worker_threads";
import type { Outcome } from "../src/job/result.ts";
import type { Result } from "../src/quantities/index.ts";
import type { AnsweredDemo, AppService, CheckRequest, RecordingSummary, UploadedRecording } from "./server/index.ts";
import { threadQueue } from "./thread-queue.ts";

/** What is said to the thread. */
export type ThreadJob =
  | { readonly kind: "check"; readonly request: CheckRequest }
  | { readonly kind: "describe"; readonly recording: UploadedRecording; readonly channelsText: string | null }
  | { readonly kind: "demo" };

/** `direct` answers what takes no time; `open` starts a thread that runs work-thread.ts. */
export function threadedService(
  direct: AppService,
  open: () => Worker,
): AppService & { readonly close: () => Promise<void> } {
  const queue = threadQueue(open);
  async function ask<Value>(job: ThreadJob, signal?: AbortSignal): Promise<Result<Value>> {
    const answer = await queue.ask(job, signal);
    // The thread answers with the result of the same call of the service there.
    return answer.ok ? (answer.value as Result<Value>) : answer;
  }
  return {
    ...direct,
    check: (request, signal) => ask<Outcome>({ kind: "check", request }, signal),
    describe: (recording, channelsText, signal) =>
      ask<RecordingSummary>({ kind: "describe", recording, channelsText }, signal),
    demo: () => ask<AnsweredDemo>({ kind: "demo" }),
    close: queue.close,
  };
}
