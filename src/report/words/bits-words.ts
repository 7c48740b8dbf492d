/** What a check is expected to tell, in words: one bit halves the doubt. */
export function bitsWords(bits: number): string {
  if (bits >= 0.6) return "decides much";
  if (bits >= 0.25) return "tells a good deal";
  if (bits >= 0.08) return "tells something";
  return "tells little";
}
