import type { Project, StandSettings } from './project.ts';

/**
 * The most that one glued joint adds, mm, where nobody has measured it: what a generous spread leaves when nothing is
 * squeezed out, 200 to 250 g/m² of a glue of half solids (reckoned with 1150 kg/m³ when dry). The least is nothing.
 */
export const GLUE_LINE_MOST = 0.1;

/**
 * What one glued joint adds to a width, mm, for whatever is planned, written or shown: as the workshop has measured it, and
 * until then as the stand's settings assume it.
 */
export const glueLineOf = ({ shop }: Pick<Project, 'shop'>, { glue }: Pick<StandSettings, 'glue'>): number =>
  shop.glue.line ?? glue;
