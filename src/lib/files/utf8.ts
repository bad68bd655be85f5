/** The text of bytes in UTF-8, without a byte order mark; null where they are something else. */
export function utf8(bytes: ArrayBuffer | Uint8Array): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
