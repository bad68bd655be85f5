import type { Stock } from '$lib/project/project.ts';
import type { LengthUnit } from '$lib/project/units.ts';
import { couponParts } from '$lib/workshop/coupon/couponParts.ts';
import { placedContour } from '$lib/workshop/nesting/placed.ts';
import { layerNames, type LayerName, type Plate } from './plate.ts';
import { partPlate } from './plates.ts';

/** Between the parts of a coupon, mm. */
const APART = 6;

/**
 * The coupon of a board as one drawing: slots below, the loose tabs in a row over them, the comb on top. At finished size,
 * to be cut along its lines: so what is measured on it is the whole kerf. Its widths are round in the unit.
 */
export function couponPlate(stock: Pick<Stock, 'name' | 'thickness'>, unit: LengthUnit): Plate {
  const plates = couponParts(stock, unit).map(partPlate);
  const isTab = ({ name }: Plate): boolean => name.startsWith('coupon-tab');
  const tabs = plates.filter(isTab);
  const [slots, ...combs] = plates.filter((plate) => !isTab(plate));
  const rows = [slots ? [slots] : [], tabs, combs];
  let y = 0;
  const laid = rows.flatMap((row) => {
    let x = 0;
    const set = row.map((plate) => {
      const at = movedPlate(plate, x, y);
      x += plate.width + APART;
      return at;
    });
    y += Math.max(0, ...row.map(({ height }) => height)) + APART;
    return set;
  });
  const layer = (name: LayerName) => laid.flatMap(({ layers }) => layers[name]);
  return {
    name: `coupon ${stock.name}`,
    width: Math.max(...laid.map(({ width }) => width)),
    height: Math.max(...laid.map(({ height }) => height)),
    layers: { engrave: layer('engrave'), inside: layer('inside'), outside: layer('outside') },
  };
}

/** The plate elsewhere: its size is then where it ends. */
function movedPlate(plate: Plate, x: number, y: number): Plate {
  const layers = Object.fromEntries(
    layerNames.map((name) => [name, plate.layers[name].map((contour) => placedContour(contour, { x, y, turn: 0 }))]),
  );
  const { engrave = [], inside = [], outside = [] } = layers;
  return { ...plate, width: x + plate.width, height: y + plate.height, layers: { engrave, inside, outside } };
}
