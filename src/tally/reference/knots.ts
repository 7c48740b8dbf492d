/** A few of the states that a job visited, spread so that each visited one lies near one of them. */

/** Farthest first: begins with the smallest, ends when every place is within `spacing` (already scaled by lengths) or at `most`. */
export function spreadOut(places: readonly (readonly number[])[], spacing: number, most: number): number[] {
  if (places.length === 0) return [];
  const chosen = [places.reduce((best, place, i) => (sum(place) < sum(places[best]!) ? i : best), 0)];
  const distance = places.map((place) => between(place, places[chosen[0]!]!));
  while (chosen.length < most) {
    const next = distance.reduce((far, d, i) => (d > distance[far]! ? i : far), 0);
    if (distance[next]! <= spacing) break;
    chosen.push(next);
    places.forEach((place, i) => {
      distance[i] = Math.min(distance[i]!, between(place, places[next]!));
    });
  }
  return chosen;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, v) => total + v, 0);
}

function between(a: readonly number[], b: readonly number[]): number {
  return Math.hypot(...a.map((v, d) => v - b[d]!));
}
