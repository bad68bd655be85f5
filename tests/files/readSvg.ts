import type { Contour, Vertex } from '$lib/geometry/contour.ts';
import { layerNames, type LayerName } from '$lib/files/plate.ts';

/**
 * The shapes of an SVG document turned back to y up, by the arithmetic of the SVG specification's appendix on arcs
 * (from memory): an arc's centre from its two ends, radius and flags. Every attribute is read strictly.
 */
export function readSvg(text: string): Record<LayerName, Contour[]> {
  const height = Number(/viewBox="0 0 [\d.]+ ([\d.]+)"/.exec(text)?.[1]);
  const read = (layer: LayerName): Contour[] => {
    const body = new RegExp(`<g id="${layer}"[^>]*>\n {4}<title>${layer}: [\\w ,-]+</title>\n(.*?)  </g>`, 's').exec(
      text,
    )?.[1];
    if (body === undefined) throw new Error(`no layer ${layer}`);
    return body
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => contourOf(line, height));
  };
  const [engrave, inside, outside] = layerNames;
  return { [engrave]: read(engrave), [inside]: read(inside), [outside]: read(outside) };
}

function contourOf(line: string, height: number): Contour {
  const circle = /^ {4}<circle cx="(-?[\d.]+)" cy="(-?[\d.]+)" r="([\d.]+)"\/>$/.exec(line);
  if (circle) {
    const [cx, cy, radius] = circle.slice(1).map(Number);
    return { kind: 'circle', centre: [cx ?? NaN, height - (cy ?? NaN)], radius: radius ?? NaN };
  }
  const path = /^ {4}<path d="([-\d. MLAZ]+)"\/>$/.exec(line)?.[1];
  if (path === undefined) throw new Error(`unexpected ${line}`);
  const closed = path.endsWith(' Z');
  const vertices: Vertex[] = [];
  for (const [, command, numbers = ''] of path.matchAll(/([MLA])((?: -?[\d.]+)+)/g)) {
    const values = numbers.trim().split(' ').map(Number);
    const [x = NaN, down = NaN] = values.slice(-2);
    const last = vertices.at(-1);
    if (last && command === 'A') vertices[vertices.length - 1] = { ...last, bulge: bulgeOf(last, values, height) };
    vertices.push({ x, y: height - down, bulge: 0 });
  }
  const [first, last] = [vertices[0], vertices.at(-1)];
  if (closed && first && last && vertices.length > 2 && first.x === last.x && first.y === last.y) vertices.pop();
  return { kind: 'path', closed, vertices };
}

function bulgeOf(from: Vertex, arc: readonly number[], height: number): number {
  const [rx = NaN, ry = NaN, tilt, large, sweep, x = NaN, y = NaN] = arc;
  if (arc.length !== 7 || rx !== ry || tilt !== 0) throw new Error(`not a circular arc: ${arc.join(' ')}`);
  const start = { x: from.x, y: height - from.y };
  const [halfX, halfY] = [(start.x - x) / 2, (start.y - y) / 2];
  const chord = halfX * halfX + halfY * halfY;
  const reach = Math.sqrt(Math.max(0, rx * rx - chord) / chord) * (large === sweep ? -1 : 1);
  const centre = { x: reach * halfY + (start.x + x) / 2, y: -reach * halfX + (start.y + y) / 2 };
  const full = 2 * Math.PI;
  const turn = Math.atan2(y - centre.y, x - centre.x) - Math.atan2(start.y - centre.y, start.x - centre.x);
  const positive = ((turn % full) + full) % full;
  return -Math.tan((sweep === 1 ? positive : positive - full) / 4);
}
