/** What a page may ask of a worker. */
export type RequestToWorker =
  /** Be the one that answers, from now on. */
  | { readonly kind: 'take-over' }
  /** Are all these files of your build? The answer, true or false, comes through the port that is sent along. */
  | { readonly kind: 'holds'; readonly paths: readonly string[] };

export function isRequestToWorker(data: unknown): data is RequestToWorker {
  if (typeof data !== 'object' || data === null || !('kind' in data)) return false;
  if (data.kind === 'take-over') return true;
  return (
    data.kind === 'holds' &&
    'paths' in data &&
    Array.isArray(data.paths) &&
    data.paths.every((path) => typeof path === 'string')
  );
}
