/**
 * Which encoding a file is in, told from its bytes.
 * Numbers are ASCII in all of them, so the choice only decides how names and words are read; UTF-16 is recoded to UTF-8
 * first. Text that is not valid UTF-8 is read as Windows-1252, the superset of Latin-1 that loggers write in practice.
 */
export type Encoding = "utf-8" | "windows-1252" | "utf-16le" | "utf-16be";

export type EncodingFound = { readonly encoding: Encoding; readonly markLength: number };

export function detectEncoding(head: Uint8Array): EncodingFound {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return { encoding: "utf-8", markLength: 3 };
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: "utf-16le", markLength: 2 };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: "utf-16be", markLength: 2 };
  const unmarked = utf16WithoutMark(head);
  if (unmarked !== null) return { encoding: unmarked, markLength: 0 };
  return { encoding: isUtf8(head) ? "utf-8" : "windows-1252", markLength: 0 };
}

/** ASCII in UTF-16 has a NUL in every second byte: the odd ones in little-endian, the even ones in big-endian. */
function utf16WithoutMark(head: Uint8Array): Encoding | null {
  const length = Math.min(head.length & ~1, 4096);
  if (length < 8) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < length; i += 2) {
    if (head[i] === 0) even++;
    if (head[i + 1] === 0) odd++;
  }
  const pairs = length / 2;
  if (odd > 0.7 * pairs && even < 0.05 * pairs) return "utf-16le";
  if (even > 0.7 * pairs && odd < 0.05 * pairs) return "utf-16be";
  return null;
}

/** Whether the bytes are well-formed UTF-8 (a sequence cut at the very end is allowed). */
export function isUtf8(bytes: Uint8Array): boolean {
  let i = 0;
  while (i < bytes.length) {
    const length = sequenceLength(bytes[i]!);
    if (length === 0) return false;
    for (let k = 1; k < length; k++) {
      if (i + k >= bytes.length) return true;
      if ((bytes[i + k]! & 0xc0) !== 0x80) return false;
    }
    i += length;
  }
  return true;
}

function sequenceLength(lead: number): number {
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead < 0xe0) return 2;
  if (lead >= 0xe0 && lead < 0xf0) return 3;
  if (lead >= 0xf0 && lead < 0xf5) return 4;
  return 0;
}
