import * as v from 'valibot';
import { failure, success, type Fault, type Result } from '$lib/project/fault.ts';
import { LONGEST_FILE, parseProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { projectSchema } from '$lib/project/schema.ts';
import { fromBase64url, toBase64url } from './base64url.ts';
import { checksum } from './checksum.ts';
import { deflated, inflated } from './deflate.ts';
import { utf8 } from './utf8.ts';
import { withoutDefaults } from './withoutDefaults.ts';

/**
 * A whole project as the fragment of a link: `#project-1.` and, in base64url (RFC 4648), four bytes of checksum and the
 * project file without its defaults, deflated (RFC 1951). The checksum is of the bytes before deflating: without it, a
 * changed character could come out as another sound number. A fragment stays in the browser: no server sees it.
 */

/** How a project is packed, apart from the version of the project itself. */
const PACKING = 1;
const PREFIX = 'project-';
const SUM_BYTES = 4;

/**
 * The longest link that is written or read, in characters: far more than any real project needs, and below the shortest
 * limit of the common browsers, 64 k (from memory).
 */
export const LONGEST_LINK = 60_000;

/**
 * The fragment that carries the project, without the leading `#`. Refused, with what to do instead, where it would be
 * longer than a link can be.
 *
 * @throws v.ValiError for a project that its own schema would refuse.
 */
export async function writeLink(project: Project): Promise<Result<string>> {
  const json = JSON.stringify(withoutDefaults(v.parse(projectSchema, project), projectSchema));
  const bytes = new TextEncoder().encode(json);
  const packed = await new Blob([bigEndian(checksum(bytes)), await deflated(bytes)]).arrayBuffer();
  const fragment = `${PREFIX}${PACKING}.${toBase64url(new Uint8Array(packed))}`;
  return fragment.length <= LONGEST_LINK ? success(fragment) : failure(tooLong(fragment.length));
}

/** Why a link gives no project. */
export type LinkReason =
  /** Longer than any link that is written here. */
  | 'too-long'
  /** Packed by a newer Wedgewright. */
  | 'newer'
  /** Cut short or changed on its way. */
  | 'damaged'
  /** Unfolds to more than a project file may be. */
  | 'too-large'
  /** Unpacked, but no sound project: the faults have pointers. */
  | 'unsound';

export type LinkReading =
  /** The fragment is not a project's. */
  | { readonly kind: 'none' }
  | { readonly kind: 'project'; readonly project: Project }
  | { readonly kind: 'refused'; readonly reason: LinkReason; readonly faults: readonly Fault[] };

const SHAPE = new RegExp(`^#?${PREFIX}([1-9]\\d{0,8})\\.(.*)$`, 's');

/** The project that a fragment carries, with or without its `#`. Takes bounded time and memory; never throws. */
export async function readLink(fragment: string): Promise<LinkReading> {
  const [, packing, packed] = SHAPE.exec(fragment) ?? [];
  if (packing === undefined || packed === undefined) return { kind: 'none' };
  if (fragment.length > LONGEST_LINK) return refused('too-long', tooLong(fragment.length));
  if (Number(packing) !== PACKING) return refused('newer', ofWhole(NEWER));
  const bytes = fromBase64url(packed);
  if (bytes === null || bytes.length <= SUM_BYTES) return refused('damaged', ofWhole(DAMAGED));
  const json = await inflated(bytes.subarray(SUM_BYTES), LONGEST_FILE);
  if (json.kind === 'too-long') return refused('too-large', ofWhole(TOO_LARGE));
  const whole = json.kind === 'bytes' && checksum(json.bytes) === new DataView(bytes.buffer).getUint32(0);
  return whole ? readJson(json.bytes) : refused('damaged', ofWhole(DAMAGED));
}

function bigEndian(number: number): ArrayBuffer {
  const bytes = new DataView(new ArrayBuffer(SUM_BYTES));
  bytes.setUint32(0, number);
  return bytes.buffer;
}

function readJson(bytes: Uint8Array): LinkReading {
  const text = utf8(bytes);
  if (text === null) return refused('damaged', ofWhole(DAMAGED));
  const parsed = parseProject(text);
  return parsed.ok ? { kind: 'project', project: parsed.value } : refused('unsound', ...parsed.faults);
}

const NEWER = 'expected a link of this version, got one that a newer Wedgewright made: reload the page';
const DAMAGED =
  'expected a whole link, got one that was cut short or changed on its way: ask for it again, or for a file';
const TOO_LARGE = `expected a link with a project of at most ${LONGEST_FILE / 1e6} MB, got one with more`;

const tooLong = (length: number): Fault =>
  ofWhole(`expected a link of at most ${LONGEST_LINK} characters, got ${length}: save the project as a file instead`);

const ofWhole = (message: string): Fault => ({ pointer: '', message });
const refused = (reason: LinkReason, ...faults: readonly Fault[]): LinkReading => ({ kind: 'refused', reason, faults });
