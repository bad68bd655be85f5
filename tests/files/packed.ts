import { crc32, deflateRawSync } from 'node:zlib';

/** A link as anyone could make one. Node's zlib is the writer here, so the reader is not proved by its own other half. */
export function packed(content: string | Uint8Array): string {
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(content));
  return `project-1.${Buffer.concat([sum, deflateRawSync(content)]).toString('base64url')}`;
}
