import { tillFetched } from '$lib/document/tillFetched.ts';
import type * as behaviours from './behaviours.ts';

type Tools = typeof behaviours;

/** Idle time is waited for no longer than this, ms. */
const PATIENCE = 1000;

let loading: Promise<Tools> | null = null;

/** Dragging and zooming, fetched once the page has settled: none of it is needed to draw, to read or to type. */
export function pointerTools(): Promise<Tools> {
  loading ??= idle().then(() => tillFetched(() => import('./behaviours.ts'), window));
  return loading;
}

const idle = (): Promise<void> =>
  new Promise((done) => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(() => done(), { timeout: PATIENCE });
    else setTimeout(done, PATIENCE / 4);
  });
