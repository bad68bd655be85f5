export type { Outcome } from '$lib/stand/outcome.ts';
