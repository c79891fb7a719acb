/** The reflected polynomial of CRC-32 (RFC 1952, GZIP file format specification, 1996, section 8). */
const POLYNOMIAL = 0xedb88320;

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ POLYNOMIAL : value >>> 1;
  return value >>> 0;
});

/** The bytes of a text in UTF-8; a half of a pair counts as U+FFFD. */
function* bytesOf(text: string): Generator<number> {
  for (const letter of text) {
    const point = letter.codePointAt(0)!;
    const code = point >= 0xd800 && point <= 0xdfff ? 0xfffd : point;
    if (code < 0x80) {
      yield code;
      continue;
    }
    if (code < 0x800) yield 0xc0 | (code >> 6);
    else {
      if (code < 0x10000) yield 0xe0 | (code >> 12);
      else {
        yield 0xf0 | (code >> 18);
        yield 0x80 | ((code >> 12) & 0x3f);
      }
      yield 0x80 | ((code >> 6) & 0x3f);
    }
    yield 0x80 | (code & 0x3f);
  }
}

/** CRC-32 of a text in UTF-8 as eight hexadecimal figures: against accidents, not against intent. */
export function checksum(text: string): string {
  let crc = 0xffffffff;
  for (const byte of bytesOf(text)) crc = table[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return ((crc ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
}
