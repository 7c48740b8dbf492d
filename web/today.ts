/** The date as it is written on a card: "24 November 2026". */
export function today(): string {
  return new Date().toLocaleDateString("en-GB", { day: "numeric", month: "long", year: "numeric" });
}
