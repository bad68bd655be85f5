import '$lib/state/fieldTable.ts';

/** The fields of the groups that are folded at first, and with them the rest of the field table. */
export { default as BoardFields } from './BoardFields.svelte';
export { default as CrossoverFields } from './CrossoverFields.svelte';
export { default as CutterFields } from './CutterFields.svelte';
export { default as DriverFields } from './DriverFields.svelte';
export { default as MachineFields } from './MachineFields.svelte';
export { default as MonitorFields } from './MonitorFields.svelte';
export { default as PrintFields } from './PrintFields.svelte';
export { default as RoomFields } from './RoomFields.svelte';
