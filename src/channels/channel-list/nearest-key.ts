/** The known word nearest to a mistyped one, by the number of letters to change; null where none is near. */
export function nearestKey(word: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let least = Math.max(2, Math.ceil(word.length / 2)) + 1;
  for (const candidate of known) {
    const distance = edits(word.toLowerCase(), candidate.toLowerCase());
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

function edits(a: string, b: string): number {
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = previous[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      current.push(Math.min(swap, previous[j]! + 1, current[j - 1]! + 1));
    }
    previous = current;
  }
  return previous[b.length]!;
}
