/** Section "Tally": the picture, and the same numbers as a table. */
import type { Outcome } from "../../job/result.ts";
import { TallyFigure } from "../tally/tally-figure.tsx";
import { type TallyModel, tallyModel } from "../tally/tally-model.ts";
import { tallyNotes } from "../tally/tally-notes.ts";
import { TallyTable } from "../tally/tally-table.tsx";

export function Tally({ outcome }: { readonly outcome: Outcome }) {
  const model = tallyModel(outcome);
  if (model === null) {
    return (
      <p className="lead">
        No steady stretch of this recording gives the witnesses a common answer, so there is no departure to draw.
      </p>
    );
  }
  const alone = model.witnesses.length === 1;
  return (
    <>
      <p className="lead">{alone ? aloneText(model) : departureText(model)}</p>
      {!alone && <TallyFigure model={model} notes={tallyNotes(outcome)} />}
      <details className="more">
        <summary>{alone ? "The stretches as a table" : "The same as a table"}</summary>
        <TallyTable outcome={outcome} model={alone ? { ...model, witnesses: [] } : model} />
      </details>
    </>
  );
}

function aloneText(model: TallyModel): string {
  return `One witness alone, at ${stretches(model)}: it has nothing to depart from, so nothing is drawn. A second witness would make the picture.`;
}

function departureText(model: TallyModel): string {
  const { pointsWithout: left } = model;
  const without =
    left === 0
      ? ""
      : ` ${left} more ${left === 1 ? "has" : "have"} no common answer and ${left === 1 ? "is" : "are"} not drawn.`;
  return `How far each witness departs from the common answer, at ${stretches(model)} of the recording.${without}`;
}

function stretches(model: TallyModel): string {
  return model.pointsShown === 1 ? "one steady stretch" : `${model.pointsShown} steady stretches`;
}
