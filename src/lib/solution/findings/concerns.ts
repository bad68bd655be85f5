import { pointerTo } from '$lib/project/fault.ts';
import type { Finding, FindingCode } from './finding.ts';
import { harm } from './harm.ts';
import type { FindingLevel } from './told.ts';

/**
 * How grave what the checks say of each value of the project is, by its JSON pointer: the worst where several concern one
 * value. Notes are left out: they ask for no change. For form and drawing, which mark those values.
 *
 * @param layoutIndex Number of the layout that the findings are of, from 0.
 */
export function levelsByPointer(
  findings: readonly Finding[],
  layoutIndex: number,
): ReadonlyMap<string, Exclude<FindingLevel, 'note'>> {
  const levels = new Map<string, Exclude<FindingLevel, 'note'>>();
  for (const finding of findings) {
    const { level } = finding;
    if (level === 'note') continue;
    for (const pointer of concernedBy(finding, layoutIndex)) {
      const before = levels.get(pointer);
      if (before === undefined || harm[level] < harm[before]) levels.set(pointer, level);
    }
  }
  return levels;
}

/** Pointers of the values that a finding is about: those that one would look at first to mend it. */
export const concernedBy = (finding: Finding, layoutIndex: number): readonly string[] =>
  pathsOf(finding).map((path) =>
    path[0] === 'speaker' ? pointerTo(...path) : pointerTo('layouts', layoutIndex, ...path),
  );

type Path = readonly (string | number)[];

/** Within the layout, or from `speaker` down. */
const byCode: { readonly [Code in FindingCode]: (finding: Finding<Code>) => readonly Path[] } = {
  'monitor-collision': (finding) => marks(finding, 'x'),
  'monitor-in-sight-line': (finding) => marks(finding, 'x'),
  'close-to-screen': (finding) => marks(finding, 'x'),
  'screen-hidden': (finding) => marks(finding, 'x'),
  'into-wall': (finding) => [...marks(finding, acrossOf({ edge: finding.facts.way })), wallAt(finding.subject.wall)],
  'close-to-wall': (finding) => [...marks(finding, 'y'), wallAt(finding.subject.wall)],
  'stand-over-edge': (finding) => marks(finding, acrossOf(finding.facts)),
  'cabinet-over-edge': (finding) => marks(finding, acrossOf(finding.facts)),
  'into-surface': (finding) => marks(finding, 'y'),
  'plate-tips': (finding) => marks(finding, 'y'),
  'no-stop': () => [['stand', 'stop']],
  'falls-over': () => base,
  tips: () => base,
  'may-tip': () => base,
  slides: ({ facts: { by } }) => [['stand', by === 'pad' ? 'padFriction' : 'friction']],
  'stand-slides': ({ facts: { by } }) => [['stand', by === 'feet' ? 'feetFriction' : 'friction']],
  'idle-mat': () => [['stand', 'feet']],
  inclination: () => [['aim', 'tilt']],
  'axis-misses-head': () => [['aim', 'toe']],
  'axis-misses-ears': () => [['aim', 'tilt']],
  'lobe-unknown': () => designPoint,
  'time-difference': () => offset,
  'level-difference': () => offset,
  'triangle-angle': () => [
    ['placement', 'left', 'x'],
    ['placement', 'right', 'x'],
  ],
  'cut-by-hand': () => [['stand', 'build']],
  'crossover-sum': () => [['aim', 'through']],
  'treble-off-axis': () => [['aim', 'through']],
  'early-reflection': () => [],
  'posture-missed': () => [['aim', 'over']],
  'posture-suffers': () => [],
  'posture-triangle': () => [],
};

const pathsOf = <Code extends FindingCode>(finding: Finding<Code>): readonly Path[] => byCode[finding.code](finding);

const marks = ({ sides }: Finding, axis: 'x' | 'y'): readonly Path[] => sides.map((side) => ['placement', side, axis]);

const wallAt = (index: number): Path => ['room', 'walls', index, 'distance'];

const acrossOf = ({ edge }: { readonly edge: 'front' | 'back' | 'left' | 'right' }): 'x' | 'y' =>
  edge === 'left' || edge === 'right' ? 'x' : 'y';

const base: readonly Path[] = [
  ['stand', 'width'],
  ['stand', 'lift'],
];
const designPoint: readonly Path[] = [['speaker', 'designPoint']];
const offset: readonly Path[] = [['listener', 'offset']];
