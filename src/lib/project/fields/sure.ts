import { asMm, says } from '$lib/project/sentence.ts';
import { FINE, FINEST, angle, length, type Span } from './kinds.ts';

const span: Span = [0, 500, 'from a gauge block to a guess'];

/**
 * How far a measured value may be off, to both sides: half the width of the span in which it lies for certain. What a
 * careful hand reaches with a tape, a square and a caliper, common practice, no source. Ears move with every breath and
 * with the mood; a board is even to a few hundredths.
 */
export const sure = {
  deskWidth: length('Width, ±', 'a tape laid flat', span, { default: 2 }),
  deskDepth: length('Depth, ±', 'a tape laid flat', span, { default: 2 }),
  deskHeight: length('Height, ±', 'a tape stood upright', span, { default: 2 }),
  wallGap: length('Gap, ±', 'skirting and cables are in the way', span, { default: 5 }),
  earHeight: length('Ear height, ±', says`people sink and stretch by ${asMm(10)}`, span, { default: 10 }),
  setback: length('Setback, ±', says`chairs roll by ${asMm(20)} and more`, span, { default: 20 }),
  headOffset: length('Head off the middle, ±', 'nobody sits perfectly still', span, { default: 10 }),
  monitor: length('Screen, ±', 'every number of it; only sight lines depend on it', span, { default: 5 }),
  speakerWidth: length('Width, ±', 'a rule or a square', span, { default: 1 }),
  speakerHeight: length('Height, ±', 'a rule or a square', span, { default: 1 }),
  speakerDepth: length('Depth, ±', 'a rule or a square', span, { default: 1 }),
  baffleRake: angle('Rake, ±', 'a phone laid on it shows half a degree', [0, 45, 'from a clinometer to a guess'], {
    default: 0.5,
    step: FINE,
  }),
  driverHeight: length('Centre height, ±', 'half the sum of rim bottom and rim top', span, { default: 1 }),
  driverOffset: length('Centre offset, ±', 'half the difference of the side gaps', span, { default: 1 }),
  markX: length('Sideways, ±', 'a tape and a square', span, { default: 2 }),
  markY: length('From the edge, ±', 'a tape and a square', span, { default: 2 }),
  thickness: length('Thickness, ±', 'a caliper, in three places', span, { default: 0.05, step: FINEST }),
};
