import { degrees } from '$lib/geometry/angle.ts';
import { findingDocuments } from '$lib/solution/findings/findingDocument.ts';
import { plainText } from '$lib/project/sentence.ts';
import type { FindingCode } from '$lib/solution/findings/finding.ts';
import { screensSeen } from '$lib/solution/screensSeen.ts';
import { posturesOf } from '$lib/solution/postures.ts';
import type { StandPlan } from '$lib/solution/document.ts';
import type { Solution } from '$lib/solution/solution.ts';
import type { ResponseBand, ResponsePlan } from '$lib/solution/soundDocument.ts';
import type { Sheet } from '$lib/workshop/part.ts';
import { labelsOf } from '$lib/workshop/lettering/pieceLabel.ts';

const PLAN_FORMAT = 'wedgewright/plan';
const PLAN_VERSION = 2;

/**
 * `plan.json`: all of a solution, with every finding and what would mend it, and how the parts lie. Lengths in mm, angles in
 * degrees, nothing rounded.
 *
 * @param sheets How the parts lie, turns in radians.
 */
export function planFile(solution: Solution, sheets: readonly Sheet[]): string {
  const { layout, speedOfSound, head, ears, sides, triangle, sure, findings, balance, stand, parts, sound } = solution;
  const document = {
    format: PLAN_FORMAT,
    version: PLAN_VERSION,
    layout: layout.name,
    speedOfSound,
    head,
    ears,
    sides,
    triangle,
    sure,
    postures: posturesOf(solution),
    screens: screensSeen(solution),
    findings: findingDocuments(findings).map((finding) => ({
      ...finding,
      suggestion: suggestionFor(solution, finding.code),
    })),
    balance,
    stand: { left: inWords(stand.left), right: inWords(stand.right) },
    parts: parts.map((part) => ({ ...part, labels: labelsOf(part) })),
    sheets: sheets.map(inDegrees),
    sound: {
      frequencies: [...sound.frequencies],
      sides: {
        left: { response: curves(sound.sides.left.response), band: bandOf(sound.bands?.left) },
        right: { response: curves(sound.sides.right.response), band: bandOf(sound.bands?.right) },
      },
      both: curves(sound.both),
      bothBand: bandOf(sound.bands?.both),
      deskKnownFrom: sound.deskKnownFrom,
      leftOut: sound.leftOut,
    },
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

/** What would mend a finding, tried on the whole solution: its label in words, its edits, what it clears and costs. */
function suggestionFor({ suggestions }: Solution, code: FindingCode) {
  const found = suggestions.get(code);
  return found ? { ...found, label: plainText(found.label) } : null;
}

/** A stand with what there is to know of it in words, as its steps are. */
const inWords = (stand: StandPlan) => ({ ...stand, notes: stand.notes.map(plainText) });

const inDegrees = (sheet: Sheet) => ({
  ...sheet,
  placements: sheet.placements.map((placement) => ({ ...placement, turn: degrees(placement.turn) })),
});

const curves = ({ level, fine, smooth, notches }: ResponsePlan) => ({
  level: [...level],
  fine: [...fine],
  smooth: [...smooth],
  notches,
});

const bandOf = (band: ResponseBand | undefined) =>
  band ? { least: [...band.least], most: [...band.most], notches: band.notches } : null;
