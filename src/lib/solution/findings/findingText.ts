import type { SideName } from '$lib/project/project.ts';
import { plainText, sentenceText, type Sentence } from '$lib/project/sentence.ts';
import type { LengthDisplay } from '$lib/project/units.ts';
import type { Finding, FindingCode } from './finding.ts';
import type { Sides } from './told.ts';
import { wordings } from './wordings.ts';

/** What is said of a finding, as page and paper show it. */
export const findingText = (finding: Finding, display: LengthDisplay): string =>
  sentenceText(findingSentence(finding), display);

/** The same in mm, in the characters of a keyboard. */
export const plainFindingText = (finding: Finding): string => plainText(findingSentence(finding));

const byCode: { readonly [Code in FindingCode]: (told: Finding<Code>, sides: Sides) => Sentence } = wordings;

const findingSentence = <Code extends FindingCode>(finding: Finding<Code>): Sentence =>
  byCode[finding.code](finding, sidesText(finding.sides));

function sidesText([one, other]: readonly SideName[]): Sides {
  return one !== undefined && other === undefined
    ? { The: `The ${one}`, the: `the ${one}` }
    : { The: 'Each', the: 'each' };
}
