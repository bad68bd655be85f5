import { aim, over, placement, through, tilt, toe } from './aim.ts';
import { built, reading } from './built.ts';
import {
  air,
  desk,
  gap,
  layout,
  monitor,
  outlinePoint,
  outlineRule,
  outlines,
  room,
  screenSize,
  wall,
} from './desk.ts';
import { heard } from './heard.ts';
import { general } from './general.ts';
import { isField, type Field, type Fields } from './field.ts';
import { listener, posture } from './listener.ts';
import { cutter, shop } from './machines.ts';
import { crossover, designPoint, driver, speaker } from './speaker.ts';
import { stand } from './stand.ts';
import { offcut, stock } from './stock.ts';
import { sure } from './sure.ts';
import { surface } from './surface.ts';

/** The fields of a thing by their pointers, and those of what lies in it. */
function placed(at: string, fields: Fields): Record<string, Field> {
  const table: Record<string, Field> = {};
  for (const [key, one] of Object.entries(fields)) {
    const pointer = `${at}/${key}`;
    if (isField(one)) table[pointer] = one;
    const inside = isField(one) ? one.kind === 'switch' && one.fields : one;
    if (inside) Object.assign(table, placed(pointer, inside));
  }
  return table;
}

/** Of a side's readings. What its one number is called and may be hangs on the reading's kind: see `readingFields`. */
const readings = (side: 'left' | 'right'): Record<string, Field> => {
  const { rise, place, spot, height } = reading;
  return placed(`/layouts/*/built/sides/${side}/readings/*`, { ...spot, ...place, run: rise.run, ...height });
};

/** Every field of a project, by its pointer with `*` for a place in a list. */
export const fieldTable: Readonly<Record<string, Field>> = {
  ...placed('', general),
  ...placed('/speaker', speaker),
  ...placed('/speaker/designPoint', designPoint),
  ...placed('/speaker/drivers/*', driver),
  ...placed('/speaker/crossovers/*', crossover),
  ...placed('/stock/*', stock),
  ...placed('/stock/*/offcuts/*', offcut),
  ...placed('/cutter', cutter),
  ...placed('/shop', shop),
  ...placed('/sure', sure),
  ...placed('/layouts/*', layout),
  ...placed('/layouts/*/air', air),
  ...placed('/layouts/*/desk', desk),
  ...placed('/layouts/*/desk/outline', {
    rule: outlineRule,
    ...outlines.l,
    ...outlines.corner,
    ...outlines.bowed,
    ...outlines.rectangle,
  }),
  ...placed('/layouts/*/desk/outline/points/*', outlinePoint),
  ...placed('/layouts/*/room', { gap, ...room }),
  ...placed('/layouts/*/room/walls/*', wall),
  ...placed('/layouts/*/surfaces/*', surface),
  ...placed('/layouts/*/monitors/*', { ...screenSize, ...monitor }),
  ...placed('/layouts/*/listener', listener),
  ...placed('/layouts/*/listener/postures/*', posture),
  ...placed('/layouts/*/placement', placement),
  ...placed('/layouts/*/aim', aim),
  ...placed('/layouts/*/aim/through', through),
  ...placed('/layouts/*/aim/toe', toe),
  ...placed('/layouts/*/aim/tilt', tilt),
  ...placed('/layouts/*/aim/over', over),
  ...placed('/layouts/*/stand', stand),
  ...placed('/layouts/*/built', built),
  ...placed('/layouts/*/built/heard/*', heard),
  ...readings('left'),
  ...readings('right'),
};
