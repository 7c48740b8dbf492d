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

/** Where neighbours share no line: a dash at each place, so wide to either side. */
export function dashPath(places: readonly Place[], half: number): string {
  return places
    .map((place) => (place === null ? "" : linePath([place.x - half, place.x + half].map((x) => ({ x, y: place.y })))))
    .join("");
}

/** The same with height: an upright bar from the upper to the lower end. */
export function barPath(upper: readonly Place[], lower: readonly Place[], half: number): string {
  return upper
    .map((top, k) => {
      const foot = lower[k];
      if (top === null || foot === null || foot === undefined) return "";
      const side = (y: number) => [
        { x: top.x - half, y },
        { x: top.x + half, y },
      ];
      return bandPath(side(top.y), side(foot.y));
    })
    .join("");
}

function thousandth(share: number): number {
  return Number((share * 1000).toFixed(1));
}
