/** The parts of a multipart upload: recordings as bytes, engine and channel list as texts. */
import type { Context } from "hono";
import { failure, type Result, success } from "../../src/quantities/index.ts";
import { FIELD } from "./contract.ts";
import type { UploadedRecording } from "./service.ts";

export type Upload = {
  readonly recordings: readonly UploadedRecording[];
  readonly engineText: string | null;
  readonly channelsText: string | null;
};

export async function readUpload(c: Context): Promise<Result<Upload>> {
  if (!(c.req.header("content-type") ?? "").startsWith("multipart/form-data")) return notAForm("it is no form");
  let form: FormData;
  try {
    form = await c.req.formData();
  } catch (error) {
    // The page left, or was told to cancel, in the middle of its upload.
    if ((error as NodeJS.ErrnoException).code === "ECONNRESET" || c.req.raw.signal.aborted)
      return failure("upload-cut", "The upload broke off.", "Send it again.");
    // The parser throws TypeError at a broken boundary; anything else is a fault of ours.
    if (error instanceof TypeError) return notAForm(error.message);
    throw error;
  }
  const files = form.getAll(FIELD.recording).filter((part) => part instanceof File);
  if (files.length === 0) {
    return failure("no-recording", "No recording was sent.", "Choose at least one recording.");
  }
  const recordings = await Promise.all(
    files.map(async (file) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) })),
  );
  return success({ recordings, engineText: text(form, FIELD.engine), channelsText: text(form, FIELD.channels) });
}

function notAForm(why: string) {
  return failure("not-an-upload", `The upload could not be taken apart: ${why}.`, "Send it as multipart/form-data.");
}

function text(form: FormData, field: string): string | null {
  const value = form.get(field);
  return typeof value === "string" ? value : null;
}
