/** UTF-16 bytes recoded to UTF-8, chunk by chunk: a unit or a surrogate pair may be cut between two chunks. */
export type Recoder = (chunk: Uint8Array) => Uint8Array;

export function utf16Recoder(littleEndian: boolean): Recoder {
  let pending: number[] = [];
  let high = 0;
  return (chunk) => {
    const bytes = pending.length === 0 ? chunk : Uint8Array.from([...pending, ...chunk]);
    const units = bytes.length >> 1;
    pending = bytes.length % 2 === 1 ? [bytes[bytes.length - 1]!] : [];
    const out = new Uint8Array(units * 3 + 3);
    let length = 0;
    for (let i = 0; i < units; i++) {
      const first = bytes[2 * i]!;
      const second = bytes[2 * i + 1]!;
      const unit = littleEndian ? first | (second << 8) : second | (first << 8);
      if (high !== 0) {
        const pair = unit >= 0xdc00 && unit < 0xe000;
        length = write(out, length, pair ? 0x10000 + ((high - 0xd800) << 10) + (unit - 0xdc00) : 0xfffd);
        high = 0;
        if (pair) continue;
      }
      if (unit >= 0xd800 && unit < 0xdc00) high = unit;
      else length = write(out, length, unit >= 0xdc00 && unit < 0xe000 ? 0xfffd : unit);
    }
    return out.subarray(0, length);
  };
}

function write(out: Uint8Array, at: number, code: number): number {
  let i = at;
  if (code < 0x80) out[i++] = code;
  else if (code < 0x800) {
    out[i++] = 0xc0 | (code >> 6);
    out[i++] = 0x80 | (code & 0x3f);
  } else if (code < 0x10000) {
    out[i++] = 0xe0 | (code >> 12);
    out[i++] = 0x80 | ((code >> 6) & 0x3f);
    out[i++] = 0x80 | (code & 0x3f);
  } else {
    out[i++] = 0xf0 | (code >> 18);
    out[i++] = 0x80 | ((code >> 12) & 0x3f);
    out[i++] = 0x80 | ((code >> 6) & 0x3f);
    out[i++] = 0x80 | (code & 0x3f);
  }
  return i;
}
