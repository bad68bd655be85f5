import * as v from 'valibot';
import { checksum } from '$lib/files/checksum.ts';

/**
 * One kept copy of a project, as text: the version of this form, a checksum, then JSON. A copy that was torn while it was
 * written, or changed later, does not pass for a whole one.
 */
const VERSION = 1;

const body = v.object({
  /** Counts the writes of one project from 1. */
  revision: v.pipe(v.number(), v.safeInteger(), v.minValue(1)),
  /** When it was written, ms since 1970. */
  saved: v.pipe(v.number(), v.finite()),
  title: v.string(),
  /** The last sound project. */
  project: v.unknown(),
  /** The last project whose geometry had an answer, where it is not the sound project. */
  answered: v.optional(v.unknown()),
  /** The document as typed, where it is not the sound project. */
  draft: v.optional(v.unknown()),
});

export type SnapshotBody = Readonly<v.InferOutput<typeof body>>;

export type Snapshot =
  | { readonly kind: 'empty' }
  /** `stamp` tells this copy from every other one of its project. */
  | { readonly kind: 'whole'; readonly body: SnapshotBody; readonly stamp: string }
  | { readonly kind: 'damaged' }
  /** Written by a newer version of this code. */
  | { readonly kind: 'newer' };

export function writeSnapshot(content: SnapshotBody): string {
  const json = JSON.stringify(content);
  return `${VERSION} ${sumOf(json)} ${json}`;
}

export function readSnapshot(text: string | null): Snapshot {
  if (text === null) return { kind: 'empty' };
  const [, version, rest = ''] = /^([1-9]\d{0,8}) (.*)$/s.exec(text) ?? [];
  if (version !== undefined && Number(version) > VERSION) return { kind: 'newer' };
  const [, sum, json] = /^([0-9a-f]{8}) (.*)$/s.exec(rest) ?? [];
  if (sum === undefined || json === undefined) return { kind: 'damaged' };
  const parsed = sumOf(json) === sum ? v.safeParse(body, jsonOf(json)) : null;
  return parsed?.success
    ? { kind: 'whole', body: parsed.output, stamp: `${parsed.output.revision}-${sum}` }
    : { kind: 'damaged' };
}

const sumOf = (json: string): string => checksum(new TextEncoder().encode(json)).toString(16).padStart(8, '0');

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
