import type { SideName } from '$lib/project/project.ts';
import type { Plan, SidePlan } from '$lib/solution/document.ts';
import type { FindingCode } from '$lib/solution/findings/finding.ts';
import { gravest } from '$lib/solution/findings/harm.ts';
import { angleText, tapeText } from './formatNumber.ts';
import type { SpreadTexts } from './spread.ts';

export interface TitleCell {
  readonly name: string;
  readonly text: string;
  /** What the tape leaves open of it, `± 1.4°`; empty for nothing. */
  readonly spread: string;
  /** What it is for: any sheet, one that is not narrow, or paper only, as the page says it elsewhere. */
  readonly on: 'all' | 'wide' | 'paper';
  /** Whether it is how a loudspeaker stands: its toe, tilt or lift. */
  readonly stance: boolean;
  /** How grave what the checks say of it is; null where they say nothing, or only note something. */
  readonly level: 'fault' | 'caution' | null;
}

/** The cells of the title block: whose drawing it is, and the numbers that one aims for, of both sides where they are alike. */
export function titleCells(solution: Plan, side: SideName, spread: SpreadTexts): readonly TitleCell[] {
  const { project, layout, triangle, sides, checks } = solution;
  const unit = project.display;
  const plain = (
    name: string,
    text: string,
    { about = [], on = 'all', spread: open = '', stance = false }: CellOptions = {},
  ): TitleCell => {
    const level = gravest(checks.filter(({ code }) => about.includes(code)));
    return { name, text, spread: open, on, stance, level: level === 'note' ? null : level };
  };
  const ofSide = (name: string, write: (of: SidePlan) => string, options?: CellOptions): TitleCell => {
    const alike = write(sides.left) === write(sides.right);
    return plain(`${name}, ${alike ? 'each' : side}`, write(sides[side]), options);
  };
  return [
    plain('Project', project.title, { on: 'paper' }),
    plain('Layout', layout.name, { on: 'paper' }),
    ofSide('Toe', ({ toe }) => angleText(toe), { spread: spread.toe, stance: true }),
    ofSide('Tilt', ({ tilt }) => angleText(tilt), { about: ['inclination'], spread: spread.tilt, stance: true }),
    ofSide('Lift', ({ lift }) => tapeText(lift, unit), { spread: spread.lift, stance: true }),
    plain('Triangle', angleText(triangle.angle), { about: ['triangle-angle'] }),
    ofSide('Miss at the head', ({ miss }) => tapeText(miss, unit), {
      about: ['axis-misses-head', 'axis-misses-ears'],
      on: 'wide',
    }),
  ];
}

interface CellOptions {
  /** What findings would be about its number. */
  readonly about?: readonly FindingCode[];
  readonly on?: TitleCell['on'];
  readonly spread?: string;
  readonly stance?: boolean;
}
