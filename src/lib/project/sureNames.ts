import type { SureKey } from './sure.ts';

/** What each measured value that may be off is called in the middle of a sentence. */
export const sureNames: Readonly<Record<SureKey, string>> = {
  deskWidth: 'desk’s width',
  deskDepth: 'desk’s depth',
  deskHeight: 'desk’s height',
  wallGap: 'gap to the wall',
  earHeight: 'ear height',
  setback: 'setback',
  headOffset: 'head off the middle',
  monitor: 'screen',
  speakerWidth: 'cabinet’s width',
  speakerHeight: 'cabinet’s height',
  speakerDepth: 'cabinet’s depth',
  baffleRake: 'baffle rake',
  driverHeight: 'driver’s height',
  driverOffset: 'driver’s offset',
  markX: 'mark, sideways',
  markY: 'mark, from the edge',
  thickness: 'board’s thickness',
};
