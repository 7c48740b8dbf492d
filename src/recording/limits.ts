/** Stated limits of a recording. Each is refused as soon as it is seen, before memory is spent on it. */
export const MAX_BYTES = 2_000_000_000;
export const MAX_COLUMNS = 10_000;
/** A row of 10,000 columns with 100 characters each is 1 MB; a longer line is no row of a table. */
export const MAX_LINE_BYTES = 4_000_000;
