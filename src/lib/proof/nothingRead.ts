import type { Built } from '$lib/project/project.ts';

/** Before anything is read or heard of the stands of a layout. */
export const NOTHING_READ: Built = {
  date: null,
  note: null,
  sides: { left: { readings: [] }, right: { readings: [] } },
  record: [],
  heard: [],
};
