/** The polynomial of CRC-32 (ISO-HDLC: zip, PNG, Ethernet), bits reversed. */
const POLYNOMIAL = 0xedb88320;

const table = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ POLYNOMIAL : value >>> 1;
  return value;
});

/** The CRC-32 of the bytes, as an unsigned 32-bit number: tells a torn or changed copy from a whole one, no forgery. */
export function checksum(bytes: Uint8Array): number {
  let value = 0xffffffff;
  // Counted, as stepping through bytes by an iterator takes several times as long, and files have many.
  for (let i = 0; i < bytes.length; i++) value = (value >>> 8) ^ (table[(value ^ (bytes[i] ?? 0)) & 0xff] ?? 0);
  return ~value >>> 0;
}
