/** Days since 1970-01-01 of a date in the Gregorian calendar. Source: ISO 8601 calendar; the count of days is arithmetic. */
export function daysFromDate(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const m = (month + 9) % 12; // March = 0, so that the leap day is the last of its year
  return (
    365 * y +
    Math.floor(y / 4) -
    Math.floor(y / 100) +
    Math.floor(y / 400) +
    Math.floor((153 * m + 2) / 5) +
    day -
    719_469
  );
}

export function isDate(year: number, month: number, day: number): boolean {
  if (!(year >= 1900 && year < 2200 && month >= 1 && month <= 12 && day >= 1)) return false;
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  const lengths = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return day <= lengths[month - 1]!;
}
