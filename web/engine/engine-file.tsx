/** Loading an engine file into the form, and saving the form as one. */
import { useState } from "react";
import type { Failure } from "../../src/quantities/index.ts";
import * as api from "../api.ts";
import { FailureNotice } from "../failure-notice.tsx";
import { saveText } from "../save-text.ts";
import { type EngineForm, engineText, readEngineText } from "./engine-text.ts";

type Props = { readonly form: EngineForm; readonly onChange: (form: EngineForm) => void };

export function EngineFile({ form, onChange }: Props) {
  const [failed, setFailed] = useState<Failure | null>(null);
  const take = (text: string, name: string) => {
    const read = readEngineText(text, name);
    setFailed(read.ok ? null : read);
    if (read.ok) onChange(read.value);
  };
  return (
    <div className="engine-file">
      <p>
        <label className="button" htmlFor="engine-file">
          Load an engine file
        </label>
        <input
          id="engine-file"
          className="unseen"
          type="file"
          accept=".json,application/json"
          onChange={async (event) => {
            const file = event.target.files?.[0];
            event.target.value = "";
            if (file !== undefined) take(await file.text(), file.name);
          }}
        />{" "}
        <button
          type="button"
          onClick={async () => {
            const template = await api.engineTemplate();
            if (template.ok) take(template.value.text, "the invented engine");
            else setFailed(template);
          }}
        >
          Fill in an invented engine
        </button>{" "}
        <button type="button" onClick={() => saveText("engine.json", engineText(form))}>
          Save as an engine file
        </button>
      </p>
      {failed !== null && <FailureNotice failure={failed} />}
    </div>
  );
}
