import type { Component } from 'svelte';
import { render } from 'svelte/server';

/** A part of the page as it is served; nothing in the browser, whose scripts must not carry what serves it. */
export const rendered = <Props extends Record<string, unknown>>(
  part: Component<Props>,
  options: { readonly props: Props; readonly context: Map<unknown, unknown>; readonly idPrefix: string },
): string => (import.meta.env.SSR ? render(part, options).body : '');
