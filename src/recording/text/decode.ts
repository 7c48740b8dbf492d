/** Bytes to text, and text that was encoded twice back to what it meant. */
import { isUtf8 } from "./encoding.ts";

/** The characters of Windows-1252 at 0x80 to 0x9f; below and above it equals Latin-1. 0 = not assigned. */
const WINDOWS_1252 = [
  0x20ac, 0, 0x201a, 0x0192, 0x201e, 0x2026, 0x2020, 0x2021, 0x02c6, 0x2030, 0x0160, 0x2039, 0x0152, 0, 0x017d, 0, 0,
  0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2013, 0x2014, 0x02dc, 0x2122, 0x0161, 0x203a, 0x0153, 0, 0x017e, 0x0178,
];
const byteOf = new Map<number, number>(WINDOWS_1252.flatMap((code, i) => (code === 0 ? [] : [[code, 0x80 + i]])));

/**
 * Text of a run of bytes: UTF-8 where it is well formed, else Windows-1252. Decided line by line, so that one damaged
 * byte does not change how the rest of the file is read. NUL bytes carry no text and are left out.
 */
export function decodeText(bytes: Uint8Array, start: number, end: number): string {
  let ascii = "";
  for (let i = start; i < end; i++) {
    const byte = bytes[i]!;
    if (byte >= 0x80) {
      const part = bytes.subarray(start, end);
      return isUtf8(part) ? decodeUtf8(part) : decodeWindows1252(part);
    }
    if (byte !== 0) ascii += String.fromCharCode(byte);
  }
  return ascii;
}

function decodeUtf8(bytes: Uint8Array): string {
  let text = "";
  let i = 0;
  while (i < bytes.length) {
    const lead = bytes[i]!;
    const length = lead < 0x80 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
    let code = length === 1 ? lead : lead & (0x7f >> length);
    for (let k = 1; k < length; k++) code = (code << 6) | ((bytes[i + k] ?? 0x80) & 0x3f);
    if (code > 0x10ffff) code = 0xfffd;
    if (code !== 0) text += String.fromCodePoint(code);
    i += length;
  }
  return text;
}

function decodeWindows1252(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) {
    const code = byte >= 0x80 && byte < 0xa0 ? WINDOWS_1252[byte - 0x80]! || 0xfffd : byte;
    if (code !== 0) text += String.fromCharCode(code);
  }
  return text;
}

/**
 * "Â°C" is "°C" whose UTF-8 bytes were read as Latin-1 and encoded again. Undone where the text, written as
 * Windows-1252 bytes, is well-formed UTF-8; a genuine "Â" is never followed by such bytes in a word.
 */
export function repairDoubleEncoding(text: string): string {
  let repaired = text;
  for (let round = 0; round < 3 && /[\u00c2-\u00f4][\u0080-\u00bf\u0152-\u2122]/.test(repaired); round++) {
    const bytes = toWindows1252(repaired);
    if (bytes === null || !isUtf8(bytes)) break;
    repaired = decodeUtf8(bytes);
  }
  return repaired;
}

function toWindows1252(text: string): Uint8Array | null {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    const byte = code < 0x100 ? code : byteOf.get(code);
    if (byte === undefined) return null;
    bytes[i] = byte;
  }
  return bytes;
}
