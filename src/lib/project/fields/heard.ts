import { choice, count, level, octaves, position, text, type Span } from './kinds.ts';

const stray: Span = [-2000, 2000, 'as far as a microphone is moved at a desk'];

/** What was measured with a microphone: whose sound, where, and what the program that measured it did to the curve. */
export const heard = {
  name: text('Name', 'of the file, until you change it'),
  of: choice('Plays', 'which loudspeakers played while it was measured', [
    ['left', 'the left one'],
    ['right', 'the right one'],
    ['both', 'both, the same signal'],
  ]),
  at: choice('Microphone', 'where it stood', [
    ['seat', 'at the head’s place'],
    ['near', 'near the driver'],
  ]),
  smoothed: choice(
    'Smoothed already',
    'by the program that measured: its window in octaves',
    [
      ['none', 'no, or 1/48 octave'],
      ['1/24', '1/24 octave'],
      ['1/12', '1/12 octave'],
      ['1/6', '1/6 octave'],
      ['1/3', '1/3 octave'],
    ],
    { default: 'none' },
  ),
  moved: {
    x: position('Moved, sideways', 'of the microphone, from the head’s place; plus is right', stray, { default: 0 }),
    y: position('Moved, away', 'from the head’s place; plus is to the desk', stray, { default: 0 }),
    z: position('Moved, up', 'from the head’s place; minus is down', stray, { default: 0 }),
  },
};

/** What the program keeps of the curve: nobody types it. */
export const heardCurve = {
  from: count('First cell', 'of the grid of 479 from 20 Hz to 20 kHz', [0, 478, 'the cells of the grid']),
  level: level('Level', 'mean power of one cell', [-400, 400, 'any reference']),
  step: octaves('Step', 'the widest of the file', [0, 10, 'the range of hearing in octaves']),
};
