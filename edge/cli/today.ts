/** The date of a report, as its reader writes it: the one place of the command line that reads the clock. */
export function today(): string {
  return new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric" }).format(new Date());
}
