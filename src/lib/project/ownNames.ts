/** What the things of a project are called: every title and every `name` in its document, sound or not. */
export function ownNames(document: unknown): readonly string[] {
  if (typeof document !== 'object' || document === null) return [];
  return Object.entries(document).flatMap(([key, value]) =>
    typeof value === 'string' ? (key === 'name' || key === 'title' ? [value] : []) : ownNames(value),
  );
}
