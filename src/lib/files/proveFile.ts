import { degrees } from '$lib/geometry/angle.ts';
import type { SideName } from '$lib/project/project.ts';
import type { Expected } from '$lib/proof/heard/dips.ts';
import type { Heard, HeardAnswer } from '$lib/proof/heard/heard.ts';
import type { Act } from '$lib/proof/mend.ts';
import type { SideProof } from '$lib/proof/prove.ts';
import type { Standing } from '$lib/proof/standing.ts';

/**
 * Finished stands and measured responses as a document of JSON: lengths in mm, angles in degrees, frequencies in Hz, levels in
 * dB, nothing rounded. Null for a side without readings.
 */
export function proveFile(
  layout: string,
  sides: Readonly<Record<SideName, SideProof | null>>,
  heard: HeardAnswer,
): string {
  const document = {
    format: 'wedgewright/prove',
    version: 1,
    layout,
    sides: { left: sideDocument(sides.left), right: sideDocument(sides.right) },
    heard: heard.all.map(heardDocument),
    moved: heard.followed.map(({ from, to, notch, predicted, measured }) => ({
      from: heard.all[from]?.one.name ?? null,
      to: heard.all[to]?.one.name ?? null,
      by: notch.cause,
      predicted,
      measured,
    })),
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

function sideDocument(proof: SideProof | null) {
  if (proof === null) return null;
  const { cabinet, planned, standing, spread, pass, known, residuals, odd, unclear, levelTaken, next } = proof;
  const { pass: ellipse } = spread;
  return {
    known,
    ...standingDocument(cabinet.side, standing),
    planned: standingDocument(cabinet.side, planned),
    miss: known ? pass.miss : null,
    at: known ? pass.at : null,
    // From the head, along the axis: to the right and up.
    right: known ? pass.right : null,
    over: known ? pass.over : null,
    // Where the plan's axis passes nearest to the seat's head: what the stand is mended to, and what `then` is the distance from.
    target: { at: proof.target, past: proof.past, miss: known ? proof.off.miss : null },
    postures: proof.served.map(({ name }, index) => ({
      name,
      miss: known ? (proof.passes[index]?.miss ?? null) : null,
    })),
    // Half of what holds 95 of a hundred.
    spread: {
      ...standingDocument('right', spread.standing),
      pass: { major: ellipse.major, minor: ellipse.minor, turn: degrees(ellipse.turn) },
    },
    levelTaken,
    residuals: residuals.map(({ place, reading, off, over }) => ({ place, reading, off, over })),
    odd,
    unclear,
    next: next && {
      what: next.reading.what,
      sure: next.reading.sure,
      then: { known: next.known, major: next.then.pass.major },
    },
    do: proof.leave ? [{ act: 'leave', then: proof.off.miss }] : actsDocument(proof.byTurning),
    instead: proof.leave ? null : actsDocument(proof.byMoving),
  };
}

/** The mark of the left one is on its own side again. */
const standingDocument = (side: SideName, { x, y, front, toe, tilt, roll }: Standing) => ({
  mark: { x: side === 'left' ? -x : x, y },
  frontEdgeHeight: front,
  toe: degrees(toe),
  tilt: degrees(tilt),
  roll: degrees(roll),
});

const actsDocument = (acts: readonly Act[] | null) =>
  acts?.map((act) => {
    const then = act.then.miss;
    switch (act.act) {
      case 'shim':
        return { act: act.act, where: act.where, by: act.by, then };
      case 'turn':
        return { act: act.act, by: degrees(act.by), corner: act.corner, then };
      case 'move':
        return { act: act.act, by: act.by, then };
    }
  }) ?? null;

function heardDocument({ one, overlay, matched, trials }: Heard) {
  const { name, of, at, smoothed, moved } = one;
  return {
    name,
    of,
    at,
    smoothed,
    moved,
    // Octaves; what was taken off the measured levels, and the frequencies between which the means were compared.
    window: overlay.window,
    aligned: overlay.aligned,
    // Null near the driver, where nothing is predicted. `within`: octaves that a dip may lie off, each way.
    within: matched?.within ?? null,
    dips:
      matched?.dips.map(({ frequency, depth, by, detour }, dip) => {
        const trial = trials.find((one) => one.dip === dip);
        return {
          frequency,
          depth,
          by: by === null || by === 'loudspeaker' ? by : expectedDocument(by),
          detour,
          try: trial ? { move: trial.by, then: trial.to } : null,
        };
      }) ?? null,
    missing: matched?.missing.map(expectedDocument) ?? null,
  };
}

const expectedDocument = ({ notch, range }: Expected) => ({
  surface: notch.cause,
  monitor: notch.monitor,
  frequency: notch.frequency,
  depth: notch.depth,
  range,
});
