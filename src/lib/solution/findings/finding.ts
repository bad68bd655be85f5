import type { SideName } from '$lib/project/project.ts';
import type { QuantityUnit } from '$lib/project/sentence.ts';
import type { SourceId } from './sources.ts';
import type { FindingLevel } from './told.ts';
import type { wordings } from './wordings.ts';

/** The kinds of findings: those that have a wording. */
export type FindingCode = keyof typeof wordings;

type ToldOf<Code extends FindingCode> = Parameters<(typeof wordings)[Code]>[0];

interface Common {
  readonly level: FindingLevel;
  /** The loudspeakers that it is about; none where it is about the pair or the layout. */
  readonly sides: readonly SideName[];
  readonly value: number;
  readonly limit: number;
  /** Of value and limit. */
  readonly unit: QuantityUnit;
  /** Where the limit comes from. */
  readonly source: SourceId;
}

/** One thing a check has to say, as data: `findingText` makes the sentence. */
export type Finding<Code extends FindingCode = FindingCode> = {
  [One in Code]: Common & ToldOf<One> & { readonly code: One };
}[Code];

/** What a finding is about, whatever it says of it. */
export interface FindingKind {
  readonly code: FindingCode;
  readonly subject: Finding['subject'];
}
