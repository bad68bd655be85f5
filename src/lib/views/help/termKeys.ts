/** What the help knows a word for. */
export type TermKey =
  | 'toe'
  | 'tilt'
  | 'lift'
  | 'rake'
  | 'mark'
  | 'axis'
  | 'aimed-point'
  | 'miss'
  | 'triangle'
  | 'setback'
  | 'acoustic-depth'
  | 'radiating'
  | 'crossover'
  | 'meeting'
  | 'phase'
  | 'reflection'
  | 'notch'
  | 'balance'
  | 'mirrored'
  | 'profile'
  | 'ends'
  | 'slice'
  | 'minimum-edge'
  | 'stop'
  | 'rods'
  | 'rod-clearance'
  | 'friction'
  | 'pad'
  | 'veneer'
  | 'glue'
  | 'kerf'
  | 'taper'
  | 'spacing';

/** The term that a field is about, by the end of its pointer; the first that fits. */
const ofFields: readonly (readonly [end: RegExp, term: TermKey])[] = [
  [/\/listener\/setback$/, 'setback'],
  [/\/placement\/right\/x$/, 'mark'],
  [/\/placement\/right\/y$/, 'mark'],
  [/\/aim\/through$/, 'axis'],
  [/\/through\/fraction$/, 'aimed-point'],
  [/\/aim\/toe$/, 'toe'],
  [/\/aim\/tilt$/, 'tilt'],
  [/\/speaker\/baffleRake$/, 'rake'],
  [/\/speaker\/mirrored$/, 'mirrored'],
  [/\/speaker\/centreOfMass$/, 'balance'],
  [/\/drivers\/\d+\/radiating$/, 'radiating'],
  [/\/acousticDepth$/, 'acoustic-depth'],
  [/\/crossovers\/\d+\/frequency$/, 'crossover'],
  [/\/crossovers\/\d+\/alignment$/, 'meeting'],
  [/\/stand\/lift$/, 'lift'],
  [/\/stand\/build$/, 'slice'],
  [/\/stand\/frontMargin$/, 'profile'],
  [/\/stand\/ends$/, 'ends'],
  [/\/stand\/minimumEdge$/, 'minimum-edge'],
  [/\/stand\/stop$/, 'stop'],
  [/\/stand\/rods$/, 'rods'],
  [/\/rods\/clearance$/, 'rod-clearance'],
  [/\/stand\/(friction|padFriction)$/, 'friction'],
  [/\/stand\/pad$/, 'pad'],
  [/\/stand\/veneer$/, 'veneer'],
  [/\/stand\/glue$/, 'glue'],
  [/\/cutter\/kerf$/, 'kerf'],
  [/\/cutter\/taper$/, 'taper'],
  [/\/cutter\/spacing$/, 'spacing'],
];

/** The term that the field at a pointer is about; undefined where its label says enough. */
export const termOfField = (pointer: string): TermKey | undefined => ofFields.find(([end]) => end.test(pointer))?.[1];

/** The term that a row of the results is about, by its name. */
const ofRows: ReadonlyMap<string, TermKey> = new Map([
  ['Toe', 'toe'],
  ['Tilt', 'tilt'],
  ['Lift', 'lift'],
  ['Axis over level', 'axis'],
  ['Aimed point over desk', 'aimed-point'],
  ['Axis misses head by', 'miss'],
  ['Angle at the head', 'triangle'],
  ['Slices', 'slice'],
  ['Wood round a rod hole', 'rods'],
  ['Lower driver further by', 'acoustic-depth'],
  ['Phase', 'phase'],
  ['Sum at the crossover', 'meeting'],
  ['Hits the surface', 'reflection'],
  ['First notch', 'notch'],
]);

/** The term that a row of the results is about; undefined where its name says enough. */
export const termOfRow = (name: string): TermKey | undefined => ofRows.get(name);
