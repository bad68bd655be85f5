import type { BuildDetail } from '$lib/stand/builds/build.ts';
import { builds } from '$lib/stand/builds/builds.ts';

/** The details that a build has no use for; none for what is no build, so that nothing typed is hidden. */
export function unusedDetails(build: unknown): readonly BuildDetail[] {
  const used = builds.find(({ name }) => name === build)?.details;
  return used === undefined ? [] : builds.flatMap(({ details }) => details).filter((detail) => !used.includes(detail));
}
