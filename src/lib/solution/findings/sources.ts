import { EARLY } from '$lib/acoustics/early.ts';
import { HEAD_LIMITS } from '$lib/acoustics/headHearing.ts';

/** Where the limits of findings come from: the document, or that it is a rule of thumb. */
export const sources = {
  geometry: 'geometry',
  'rule-of-thumb': 'rule of thumb',
  'listening-room': 'ITU-R BS.1116-3, as a model',
  'stereo-triangle': '60°: ITU-R BS.775-4, recommends 2, as a model; ±5° and ±15° rule of thumb',
  'head-width': 'half the head width',
  'head-treble': HEAD_LIMITS.treble.source,
  'head-crossover': HEAD_LIMITS.crossover.source,
  'head-time': HEAD_LIMITS.time.source,
  'head-level': HEAD_LIMITS.level.source,
  'crossover-loss': `a loss of ${HEAD_LIMITS.crossover.limit} dB: rule of thumb`,
  'half-power': 'half the power: rule of thumb',
  'early-reflections': EARLY.source,
  'tip-test': 'the tip test on a plane of 10° (UL 1678 §16.3.1, IEC 60065 §19.1)',
  'least-friction':
    'the plane of the tip test, with the least friction: wood on wood, dry, 0.40–0.75; rules of thumb; smooth pine down to 0.12 (Mater. Constr. 64, 2014)',
  fingers: 'room for fingers: rule of thumb',
  plug: 'a plug and its cable: rule of thumb; measure your own',
  'hidden-screen': 'geometry, from the middle of the head; a caution over 5 %: rule of thumb',
  saws: 'the saws of “Machines and glue”',
} as const satisfies Readonly<Record<string, string>>;

export type SourceId = keyof typeof sources;
