import type { Figure } from '$lib/views/figure/figure.ts';
import * as aim from './aimFigures.ts';
import * as sound from './soundFigures.ts';
import * as stand from './standFigures.ts';
import type { TermKey } from '$lib/project/fields/termKey.ts';

/** What a word means here. */
export interface Term {
  readonly name: string;
  /** One or two short sentences. */
  readonly text: string;
  readonly figure: Figure;
}

const term = (name: string, text: string, figure: Figure): Term => ({ name, text, figure });

export const terms: Readonly<Record<TermKey, Term>> = {
  toe: term(
    'Toe',
    'How far a loudspeaker is turned about the plumb line through its mark. Plus turns its front to the middle of the desk.',
    aim.toeFigure,
  ),
  tilt: term(
    'Tilt',
    'How far the cabinet leans, turned about its front bottom edge. Plus raises the front, so that the axis climbs.',
    aim.tiltFigure,
  ),
  lift: term(
    'Lift',
    'The height of the cabinet’s lowest edge over the desk: the thin end of the wedge.',
    aim.liftFigure,
  ),
  rake: term(
    'Baffle rake',
    'How far the front (the baffle) leans back from square to the cabinet’s bottom. It adds to the tilt.',
    aim.rakeFigure,
  ),
  mark: term(
    'Mark',
    'The point on the desk plumb under the middle of the cabinet’s front bottom edge. A tape finds it, and a strip of masking tape keeps it.',
    aim.markFigure,
  ),
  axis: term(
    'Axis',
    'The line that leaves the aimed point square to the front: where the loudspeaker points. Its elevation is tilt plus rake.',
    aim.axisFigure,
  ),
  'aimed-point': term(
    'Aimed point',
    'The point on the front that the axis leaves from: the centre of a driver, or a point between two. The fraction runs from 0 at the first to 1 at the second.',
    aim.pointFigure,
  ),
  miss: term(
    'Miss',
    'The shortest distance from the axis to the head, which is the middle between the two ears.',
    aim.missFigure,
  ),
  triangle: term(
    'Angle at the head',
    'How far apart the two loudspeakers are as seen from the head. 60° makes the three a triangle of equal sides.',
    aim.triangleFigure,
  ),
  setback: term(
    'Setback',
    'From the desk’s front edge level back to the ears. Minus when you lean over the desk.',
    aim.setbackFigure,
  ),
  'acoustic-depth': term(
    'Acoustic depth',
    'How far behind the face of the front a driver’s sound seems to start. A cone starts deeper than a dome; not known is 0.',
    sound.acousticDepthFigure,
  ),
  radiating: term(
    'Rim and radiating diameter',
    'The rim is what lies on the baffle. Only the dome, or the cone with half of its surround, sends sound out: the wider that is, the narrower the beam.',
    sound.radiatingFigure,
  ),
  crossover: term(
    'Crossover',
    'The frequency at which two drivers are equally loud. Below it the lower one plays, above it the upper one.',
    sound.crossoverFigure,
  ),
  meeting: term(
    'In phase, in quadrature',
    'How the waves of two drivers meet at the crossover when both are equally far away. In phase, crest comes with crest. In quadrature, one lags by a quarter of a period.',
    sound.meetingFigure,
  ),
  phase: term(
    'Phase',
    'By how much of a period the lower driver’s wave is late at the head because its way is longer. 360° is a whole period; at 180° the two cancel.',
    sound.phaseFigure,
  ),
  reflection: term(
    'Reflection',
    'Sound that comes to the head by way of a surface. It is a little later and weaker than the direct sound, and colours it.',
    sound.reflectionFigure,
  ),
  notch: term(
    'First notch',
    'The lowest frequency that a driver plays at which its direct and reflected sound cancel: there the longer way is half a wave longer, or three halves, or five.',
    sound.notchFigure,
  ),
  balance: term(
    'Balance point',
    'Where all of the cabinet’s weight can be thought to be. Balance it on a rod to find it; unknown, the middle of the cabinet is taken.',
    aim.balanceFigure,
  ),
  mirrored: term(
    'Mirror-image cabinets',
    'The left cabinet is the mirror image of the right one. Two equal cabinets whose drivers sit off the middle are not.',
    aim.mirroredFigure,
  ),
  profile: term(
    'Wedge profile',
    'The side view of the stand. Its slope is the cabinet’s bottom; margins make it longer than the cabinet, at the front and at the back.',
    stand.profileFigure,
  ),
  ends: term(
    'Ends',
    'Plumb ends stand upright on the desk. Square ends follow the front and the back of the cabinet.',
    stand.endsFigure,
  ),
  slice: term(
    'Slice',
    'One layer of the stand, cut from board to the wedge’s side view. As many as make up the width are glued side by side.',
    stand.sliceFigure,
  ),
  'minimum-edge': term(
    'Thinnest edge',
    'The least height of the wedge’s thin end. Thinner wood chars under the beam and breaks.',
    stand.minimumEdgeFigure,
  ),
  stop: term('Stop', 'A lip at the low end of the slope that keeps the cabinet from sliding off.', stand.stopFigure),
  rods: term(
    'Rods',
    'Dowels through all slices that line them up while they are glued. Enough wood must be left round their holes.',
    stand.rodsFigure,
  ),
  'rod-clearance': term(
    'Rod-hole clearance',
    'How much wider the hole is than the rod. Too little and it jams, too much and nothing lines up.',
    stand.clearanceFigure,
  ),
  friction: term(
    'Friction',
    'Rise over run of the slope on which the cabinet just begins to slip. Tip a board with the cabinet on it and measure.',
    sound.frictionFigure,
  ),
  pad: term(
    'Pad and feet',
    'Soft material on the slope and buttons under the stand. The wood is made thinner by what they take up.',
    stand.padFigure,
  ),
  veneer: term(
    'Veneer',
    'A thin sheet of good wood glued on. What is cut is smaller by its thickness, so that the finished stand has its size.',
    stand.veneerFigure,
  ),
  glue: term('Glue line', 'The thickness of one glued joint. With fifty slices even a hair adds up.', stand.glueFigure),
  kerf: term(
    'Kerf',
    'The width of material that the cut removes. Cut lines are moved outwards by half of it, so that parts come out at their size.',
    stand.kerfFigure,
  ),
  taper: term(
    'Taper',
    'The angle of the cut edge with plumb: a beam widens on its way through the board.',
    stand.taperFigure,
  ),
  spacing: term(
    'Between parts, sheet margin',
    'The least gap from part to part, and from parts to the edge of the sheet.',
    stand.spacingFigure,
  ),
};
