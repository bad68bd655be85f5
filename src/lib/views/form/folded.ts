/** The fields of groups that are folded at first. */
export { default as BoardFields } from './BoardFields.svelte';
export { default as CrossoverFields } from './CrossoverFields.svelte';
export { default as DriverFields } from './DriverFields.svelte';
export { default as MonitorFields } from './MonitorFields.svelte';
export { default as OutlineFields } from './OutlineFields.svelte';
export { default as PostureFields } from './PostureFields.svelte';
export { default as RoomFields } from './RoomFields.svelte';
export { default as SurfaceFields } from './SurfaceFields.svelte';
