import type { Reading } from '$lib/project/project.ts';

/** What something is read with, and how sure that commonly is: mm or degrees, half the span that holds 19 of 20. */
export interface Tool {
  readonly name: string;
  readonly sure: number;
}

/** One kind of reading: what it is called, from where to where, and what it is read with, the usual tool first. */
interface ReadingKind {
  readonly label: string;
  readonly hint: string;
  readonly tools: readonly [Tool, ...Tool[]];
}

// How sure a careful hand is of each: common practice, no source.
const rules = [
  { name: 'steel rule', sure: 0.5 },
  { name: 'caliper', sure: 0.1 },
  { name: 'tape', sure: 1.5 },
] as const;
const levels = [
  { name: 'digital level', sure: 0.2 },
  { name: 'phone, turned round', sure: 0.3 },
  { name: 'phone', sure: 0.5 },
  { name: 'bevel and protractor', sure: 0.5 },
] as const;
const protractors = [
  { name: 'protractor', sure: 0.5 },
  { name: 'digital protractor', sure: 0.2 },
] as const;
const tapes = [
  { name: 'tape', sure: 1.5 },
  { name: 'steel rule', sure: 0.5 },
] as const;
const lights = [
  { name: 'pointer and card', sure: 4 },
  { name: 'string and card', sure: 6 },
] as const;

/** Every kind of reading by its word in the file. */
export const readingKinds: Readonly<Record<Reading['what'], ReadingKind>> = {
  'front-height': {
    label: 'Stand, front height',
    hint: 'top of the stand under the middle of the cabinet’s front edge',
    tools: rules,
  },
  'rear-height': {
    label: 'Stand, rear height',
    hint: 'top of the stand under the middle of the cabinet’s rear edge',
    tools: rules,
  },
  'inboard-height': {
    label: 'Stand, inner height',
    hint: 'top of the stand under the middle of the cabinet’s side towards the middle of the desk',
    tools: rules,
  },
  'outboard-height': {
    label: 'Stand, outer height',
    hint: 'top of the stand under the middle of the cabinet’s side away from the middle of the desk',
    tools: rules,
  },
  slope: {
    label: 'Slope by level',
    hint: 'of the stand’s top from rear to front; front high is plus',
    tools: levels,
  },
  rise: {
    label: 'Slope by rise over run',
    hint: 'how much the stand’s top rises towards the front, over a level length',
    tools: rules,
  },
  lean: {
    label: 'Lean of the baffle',
    hint: 'from plumb; leaning back is plus',
    tools: levels,
  },
  toe: {
    label: 'Toe by protractor',
    hint: 'between the cabinet’s side and square to the desk’s front edge; front turned in is plus',
    tools: protractors,
  },
  mark: {
    label: 'Mark',
    hint: 'the point plumb under the middle of the cabinet’s front bottom edge',
    tools: tapes,
  },
  corner: {
    label: 'Corner of the cabinet',
    hint: 'plumb under a corner of the cabinet’s bottom',
    tools: tapes,
  },
  'driver-height': {
    label: 'Driver’s centre, height',
    hint: 'over the surface that the stand is on',
    tools: tapes,
  },
  spot: {
    label: 'Spot of a light',
    hint: 'on a card that stands plumb at the head, square to your view: from the desk’s middle, and over the desk',
    tools: lights,
  },
};

/** How sure a reading of a kind is where nobody says: with the usual tool. */
export const usualSure = (what: Reading['what']): number => readingKinds[what].tools[0].sure;
