/** A curve as it is pasted into an engine file. */
import type { EngineFileCurve } from "../../../job/meter-result.ts";

export function EngineFileSnippet({ curve }: { readonly curve: EngineFileCurve }) {
  const { signalUnit, flowUnit, at, points } = curve;
  const lines = [
    '"curve": {',
    `  "signalUnit": ${JSON.stringify(signalUnit)}, "flowUnit": ${JSON.stringify(flowUnit)},`,
    ...(at === undefined
      ? []
      : [`  "at": { "pressure": ${JSON.stringify(at.pressure)}, "temperature": ${JSON.stringify(at.temperature)} },`]),
    '  "points": [',
    ...points.map((point, i) => `    [${point.join(", ")}]${i === points.length - 1 ? "" : ","}`),
    "  ]",
    "}",
  ];
  return (
    <details className="more">
      <summary>As the engine file takes it, {points.length} points</summary>
      <pre className="snippet">{lines.join("\n")}</pre>
    </details>
  );
}
