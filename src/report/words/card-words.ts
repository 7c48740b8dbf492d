/** Every fixed text of the card in one typed place. Sentences about the engine come with the outcome. */
import type { Answer, Station, WitnessId } from "../../job/result.ts";

export const ANSWER_WORDS: { readonly [answer in Answer]: string } = {
  proven: "Proven",
  likely: "Likely",
  open: "Open",
  healthy: "Healthy",
};

/** What the word promises; read out with the stamp and shown as its small print. */
export const ANSWER_MEANING: { readonly [answer in Answer]: string } = {
  proven: "a check settled it",
  likely: "at least 8 in 10",
  open: "nothing stands out far enough",
  healthy: "no departure worth mending",
};

export const WITNESS_WORDS: { readonly [id in WitnessId]: string } = {
  meter: "meter",
  "meter-2": "second meter",
  pressure: "pressure",
  throttle: "throttle",
  fuel: "fuel",
  "fuel-bank1": "fuel, bank 1",
  "fuel-bank2": "fuel, bank 2",
  exhaust: "exhaust",
};

export const STATION_WORDS: { readonly [station in Station]: string } = {
  filter: "filter",
  meter: "meter",
  duct: "duct",
  compressor: "compressor",
  throttle: "throttle",
  manifold: "manifold",
  cylinders: "cylinders",
  fuel: "fuel",
  exhaust: "exhaust",
};

export const CARD_WORDS = {
  defaultTitle: "Job card",
  warning: "Before anything else",
  meansNot: "What this does not mean",
  beforeAfter: "Before and after",
  airPath: "Air path",
  tally: "Tally",
  findings: "Findings",
  checksMade: "Checks made",
  nextChecks: "Next checks",
  engine: "Engine and meter",
  recordings: "Recordings",
  open: "Assumptions, and what stays open",
  cautions: "Cautions",
  healthy: "Healthy: nothing worth mending",
  unexplained: "Something not in the catalogue",
  unseen: "What this recording cannot see",
  unseenKeeps: "the chance is what it was before looking",
  others: "Everything else together",
} as const;
