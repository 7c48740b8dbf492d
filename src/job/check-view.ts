/** Workshop checks as the page shows them: those proposed in full, those made with what they say. Types only, as result.ts. */

export type CheckView = {
  readonly title: string;
  readonly how: string;
  /** tools and parts */
  readonly needs: string;
  /** what may come out, in words; of readings, what is read */
  readonly outcomes: readonly string[];
  readonly cautions: readonly string[];
  /** what to write into the found file */
  readonly entry: string;
};

export type MadeView = {
  readonly check: string;
  readonly title: string;
  readonly bank: 1 | 2 | null;
  /** "smoke after the throttle"; "reading minus barometer +4.6 kPa" */
  readonly result: string;
  /** for or against what leads, and how strongly */
  readonly says: string;
};
