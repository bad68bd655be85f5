import { capital } from '$lib/project/capital.ts';
import type { Path } from '$lib/geometry/contour.ts';
import type { Plan } from '$lib/solution/document.ts';
import type { Solution } from '$lib/solution/solution.ts';
import type { LayerColours } from '$lib/project/project.ts';
import { planGauges } from '$lib/solution/gauges.ts';
import { extentOf } from '$lib/geometry/extent.ts';
import type { Template } from '$lib/stand/body.ts';
import { letter } from '$lib/workshop/lettering/lettering.ts';
import { sideNames } from '$lib/project/project.ts';
import { couponPlate } from './couponPlate.ts';
import { dxfFile } from './dxf.ts';
import { fileStems } from './fileName.ts';
import type { Described } from './manifest.ts';
import type { Plate } from './plate.ts';
import { partPlate } from './plates.ts';
import { svgFile } from './svg.ts';

/** Drawings of what helps at the bench, cut along their lines: a coupon of each board that is cut, and the gauges. */
export async function toolFiles(solution: Solution): Promise<readonly Described[]> {
  const { project, layout, parts } = solution;
  const boards = project.stock.filter(({ name }) => parts.some(({ stock }) => stock === name));
  const coupons = boards.map((board) => couponPlate(board, project.display.length));
  const gauges = planGauges(solution, layout.stand).map(partPlate);
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

/** The lines that solid wood is sawn along, to print at full size: a plate for each face of each stand's block. */
export const blockPlates = ({ stand }: Pick<Plan, 'stand'>): readonly Plate[] =>
  sideNames.flatMap((side) =>
    stand[side].blocks.flatMap(({ name, templates }) =>
      templates.map((template) => templatePlate(`${side} stand`, name, template)),
    ),
  );

/** Letters inside the outline: no higher, mm, and no more of its lower end. */
const HIGHEST = 4;
const SHARE = 0.5;

function templatePlate(stand: string, block: string, { face, outline, ends }: Template): Plate {
  const { right, top } = extentOf(outline);
  const heights = edgeHeights(outline, right);
  const height = Math.min(HIGHEST, SHARE * Math.min(...heights));
  const at = { height, y: (SHARE / 2) * Math.min(...heights) };
  const [left, far] = ends;
  return {
    name: `${stand}, ${block}, ${face}`,
    width: right,
    height: top,
    layers: {
      outside: [outline],
      inside: [],
      engrave: [
        ...letter(left, { ...at, x: height, anchor: 'start' }),
        ...letter(`${stand}, ${face}`, { ...at, x: right / 2, anchor: 'middle' }),
        ...letter(far, { ...at, x: right - height, anchor: 'end' }),
      ],
    },
  };
}

/** How high the outline is in its left and its right half. */
const edgeHeights = ({ vertices }: Path, width: number): readonly number[] =>
  [true, false].map((left) => Math.max(...vertices.filter(({ x }) => x < width / 2 === left).map(({ y }) => y)));
