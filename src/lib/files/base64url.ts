/** The URL-safe alphabet of RFC 4648, section 5, without padding. */
const ALPHABET = /^[A-Za-z0-9_-]*$/;

/** How many bytes become characters at once: a call takes only so many arguments. */
const CHUNK = 8192;

export function toBase64url(bytes: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += CHUNK) binary += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The bytes, or null where the text is not base64url or was cut in the middle of a byte. */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!ALPHABET.test(text) || text.length % 4 === 1) return null;
  return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (character) => character.charCodeAt(0));
}
