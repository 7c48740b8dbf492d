/** Section "Next checks": what would settle it soonest. Drawn only where the result names a check. */
import type { NextCheck } from "../../job/result.ts";
import { formatNumber, NARROW_SPACE } from "../words/number-words.ts";

export function NextChecks({ checks }: { readonly checks: readonly NextCheck[] }) {
  return (
    <ol className="checks">
      {checks.map((check) => (
        <li key={check.check}>
          <p>{check.text}</p>
          <p className="check-numbers">
            {formatNumber(check.minutes, 2)}
            {NARROW_SPACE}min, {formatNumber(check.informationBits, 2)}
            {NARROW_SPACE}bit
          </p>
        </li>
      ))}
    </ol>
  );
}
