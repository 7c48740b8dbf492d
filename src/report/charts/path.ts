/** Paths in a 1000 by 1000 square that is stretched over its figure (strokes keep their width). */
export const STRETCHED = { viewBox: "0 0 1000 1000", preserveAspectRatio: "none" } as const;

export type Place = { readonly x: number; readonly y: number } | null;

/** A line through places given as shares of width and height from the top left; a null lifts the pen. */
export function linePath(places: readonly Place[]): string {
  let pen = "M";
  let path = "";
  for (const place of places) {
    if (place === null) {
      pen = "M";
      continue;
    }
    path += `${pen}${thousandth(place.x)} ${thousandth(place.y)}`;
    pen = "L";
  }
  return path;
}

/** The area between an upper and a lower line over the same places. */
export function bandPath(upper: readonly Place[], lower: readonly Place[]): string {
  const outline = linePath([...upper, ...lower.toReversed()]);
  return outline === "" ? "" : `${outline}Z`;
}

function thousandth(share: number): number {
  return Number((share * 1000).toFixed(1));
}
