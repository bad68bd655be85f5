import { utf8 } from '$lib/files/utf8.ts';

/** Bytes looked at to tell text from something else. */
const LOOK = 4096;

/**
 * The text of a measured response's bytes: UTF-8, UTF-16 where its byte order mark says so, else Windows-1252, in which any
 * bytes are text and the ° of a header is one. Null where they are no text: a NUL, or control characters among the first bytes.
 */
export function bytesText(bytes: Uint8Array): string | null {
  const text = decoded(bytes);
  if (text.includes('\0')) return null;
  return /[\x01-\x08\x0e-\x1a\x1c-\x1f\x7f]/.test(text.slice(0, LOOK)) ? null : text;
}

function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  return utf8(bytes) ?? new TextDecoder('windows-1252').decode(bytes);
}
