import type { Handle } from '@sveltejs/kit';

/** The lettering is asked for together with the styles, so that it is there before the first line is set. */
export const handle: Handle = ({ event, resolve }) =>
  resolve(event, { preload: ({ type }) => type === 'js' || type === 'css' || type === 'font' });
