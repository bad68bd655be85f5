import { VERSION } from '$lib/project/schema.ts';
import type { ZipEntry } from './zip.ts';

/** A file of the set with what it is, in words. */
export interface Described extends ZipEntry {
  readonly about: string;
}

/** A file that could not be made, and why. */
export interface LeftOut {
  readonly path: string;
  readonly reason: string;
}

/** What the set is of. */
export interface Subject {
  readonly project: string;
  readonly layout: string;
}

/**
 * The list of all files: what each is, its bytes and its SHA-256 (FIPS 180-4), and what was left out. JSON, because names
 * of any kind stay apart from the list's own structure, programs check it as it is, and people can read it. No date: the
 * same project gives the same bytes. Where a page has no cryptography (served without TLS), the sums are null.
 */
export async function manifest(
  subject: Subject,
  files: readonly Described[],
  leftOut: readonly LeftOut[],
): Promise<string> {
  const listed = await Promise.all(
    files.map(async ({ path, about, content }) => {
      const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : new Uint8Array(content);
      return { path, about, bytes: bytes.length, sha256: await sha256(bytes) };
    }),
  );
  const list = {
    format: 'wedgewright/manifest',
    version: 1,
    projectVersion: VERSION,
    ...subject,
    files: listed,
    leftOut,
  };
  return `${JSON.stringify(list, null, 2)}\n`;
}

async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string | null> {
  const subtle: SubtleCrypto | undefined = crypto.subtle;
  if (!subtle) return null;
  const sum = new Uint8Array(await subtle.digest('SHA-256', bytes));
  return Array.from(sum, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
