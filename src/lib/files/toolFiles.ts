import { polygonPath } from '$lib/geometry/contour.ts';
import type { Plan } from '$lib/plan/document.ts';
import type { LayerColours, Project } from '$lib/project/project.ts';
import { planGauges } from '$lib/plan/gauges.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import { sideNames } from '$lib/project/project.ts';
import { couponPlate } from './couponPlate.ts';
import { dxfFile } from './dxf.ts';
import { fileStems } from './fileName.ts';
import type { Described } from './manifest.ts';
import type { Plate } from './plate.ts';
import { partPlate } from './plates.ts';
import { svgFile } from './svg.ts';

/** Drawings of what helps at the bench, cut along their lines: a coupon of each board that is cut, and the gauges. */
export async function toolFiles(project: Project, plan: Plan): Promise<readonly Described[]> {
  const boards = project.stock.filter(({ name }) => plan.parts.some(({ stock }) => stock === name));
  const coupons = boards.map(couponPlate);
  const layout = project.layouts.find(({ name }) => name === plan.layout);
  const gauges = layout ? planGauges(plan, layout.stand).map(partPlate) : [];
  return [
    ...(await drawn('coupons', coupons, project.cutter.colours, 'to cut first, along its lines, and to measure')),
    ...(await drawn('gauges', gauges, project.cutter.colours, 'to cut along its lines and to check an angle by')),
  ];
}

async function drawn(
  folder: string,
  plates: readonly Plate[],
  colours: LayerColours | null,
  about: string,
): Promise<readonly Described[]> {
  const stems = fileStems(plates.map(({ name }) => name));
  const files = await Promise.all(
    plates.map(async (plate, i) => {
      const what = `${capital(plate.name)}, ${about}`;
      return [
        { path: `${folder}/${stems[i]}.svg`, about: `${what}; SVG in mm`, content: svgFile(plate, colours) },
        { path: `${folder}/${stems[i]}.dxf`, about: `${what}; DXF in mm`, content: await dxfFile(plate, colours) },
      ];
    }),
  );
  return files.flat();
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The lines that solid wood is sawn along, to print at full size: one plate for each face that differs. */
export function blockPlates({ stand }: Plan): readonly Plate[] {
  const ofSide = (side: 'left' | 'right'): Plate[] =>
    stand[side].blocks.flatMap(({ name, templates }) =>
      templates.map(({ face, outline }): Plate => {
        const path = polygonPath(outline);
        const { right, top } = extentOf(path);
        return {
          name: `${name} ${face}`,
          width: right,
          height: top,
          layers: { outside: [path], inside: [], engrave: [] },
        };
      }),
    );
  const [left, right] = sideNames.map(ofSide);
  if (!left || !right || JSON.stringify(left) === JSON.stringify(right)) return left ?? [];
  return [...named(left, 'left'), ...named(right, 'right')];
}

const named = (plates: readonly Plate[], side: string): Plate[] =>
  plates.map((plate) => ({ ...plate, name: `${plate.name}, ${side} stand` }));
