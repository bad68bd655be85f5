import { angleText, trimmed } from '$lib/project/lengthText.ts';
import { sideNames } from '$lib/project/project.ts';
import { servedText } from '$lib/solution/servedText.ts';
import { buildNamed } from '$lib/stand/builds/builds.ts';
import { table, text, type Section } from './block.ts';
import { lengthsOf, type Subject } from './subject.ts';

/** The marks on the desk set the toe, and a tape sets the marks. */
const TOE_DECIMALS = 1;

/** What is built and how it stands: the numbers to have at hand. */
export function overview({ plan }: Subject): Section {
  const { bare, cut, unit } = lengthsOf(plan.project);
  const { sides, stand } = plan;
  const row = (name: string, of: (side: 'left' | 'right') => string): readonly string[] => [name, ...sideNames.map(of)];
  const { build, base } = stand.right;
  const lies = base === 'turned' ? 'turned with its cabinet' : 'square to the desk';
  return {
    id: 'overview',
    title: 'What is built',
    blocks: [
      text(
        `A pair of stands, each made of ${buildNamed(build).description}, its base ${lies}. Lengths in ${unit}, angles in degrees. Inboard is the side towards the middle of the desk, outboard the other.`,
      ),
      text(
        'Counts under “Each stand”, “Left stand” and “Right stand” are for one stand; the cut list, the sheets and the files are for both.',
      ),
      text(servedText(plan.layout)),
      table(
        'The two stands',
        ['', 'left', 'right'],
        [
          row('Slope (tilt)', (side) => angleText(sides[side].tilt)),
          row('Toe', (side) => `${trimmed(sides[side].toe, TOE_DECIMALS)}°`),
          row('Height of the wood, front', (side) => cut(stand[side].frontHeight)),
          row('Height of the wood, rear', (side) => cut(stand[side].rearHeight)),
          row('Finished width', (side) => cut(stand[side].width)),
          row('Width asked for', (side) => bare(stand[side].widthAsked)),
          row('Mass, approximate, kg', (side) => stand[side].mass.toFixed(2)),
        ],
      ),
    ],
  };
}
