import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { checksum } from '$lib/files/checksum.ts';

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

it('has the check value of CRC-32/ISO-HDLC', () => {
  // The catalogue of CRC algorithms gives 0xCBF43926 for the nine digits (from memory).
  expect(checksum(bytesOf('123456789'))).toBe(0xcbf43926);
  expect(checksum(bytesOf(''))).toBe(0);
});

it('agrees with zlib', () => {
  fc.assert(
    fc.property(fc.uint8Array(), (bytes) => {
      expect(checksum(bytes)).toBe(crc32(bytes));
    }),
  );
});
