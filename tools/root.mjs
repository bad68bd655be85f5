import { fileURLToPath } from 'node:url';

/** The root of the repository, with a separator at its end. */
export const root = fileURLToPath(new URL('..', import.meta.url));
