import type { Mesh } from './mesh.ts';
import { fixed } from './number.ts';
import { xmlText } from './xml.ts';
import { packed } from './zip.ts';

/** One body of a 3MF file. */
export interface NamedMesh {
  readonly name: string;
  readonly mesh: Mesh;
  /** How many of it stand on the bed; default 1. */
  readonly copies?: number;
}

/** Between neighbours on the bed, mm: so that no skirt or brim joins them (common practice, no source). */
const APART = 10;

const XML = '<?xml version="1.0" encoding="UTF-8"?>';

/** Namespaces and types of the 3MF Core Specification and of the Open Packaging Conventions under it. */
const MODEL_SPACE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const MODEL_TYPE = 'application/vnd.ms-package.3dmanufacturing-3dmodel+xml';
const MODEL_RELATION = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';
const TYPES_SPACE = 'http://schemas.openxmlformats.org/package/2006/content-types';
const RELATIONS_SPACE = 'http://schemas.openxmlformats.org/package/2006/relationships';
const RELATIONS_TYPE = 'application/vnd.openxmlformats-package.relationships+xml';

/**
 * The bodies as a 3MF file (Core Specification), in mm: each an object of its own with its name, as many
 * copies of it as asked for standing on the bed side by side. The same bodies always give the same bytes.
 *
 * @throws RangeError naming the body when a corner is not finite.
 */
export function threeMfFile(title: string, bodies: readonly NamedMesh[]): Uint8Array {
  return packed([
    { path: '[Content_Types].xml', content: contentTypes() },
    { path: '_rels/.rels', content: relations() },
    { path: '3D/3dmodel.model', content: model(title, bodies) },
  ]);
}

const contentTypes = (): string =>
  lines(
    XML,
    `<Types xmlns="${TYPES_SPACE}">`,
    `  <Default Extension="rels" ContentType="${RELATIONS_TYPE}"/>`,
    `  <Default Extension="model" ContentType="${MODEL_TYPE}"/>`,
    '</Types>',
  );

const relations = (): string =>
  lines(
    XML,
    `<Relationships xmlns="${RELATIONS_SPACE}">`,
    `  <Relationship Target="/3D/3dmodel.model" Id="model" Type="${MODEL_RELATION}"/>`,
    '</Relationships>',
  );

const model = (title: string, bodies: readonly NamedMesh[]): string =>
  lines(
    XML,
    `<model unit="millimeter" xml:lang="en" xmlns="${MODEL_SPACE}">`,
    `  <metadata name="Title">${xmlText(title)}</metadata>`,
    '  <metadata name="Application">Wedgewright</metadata>',
    '  <resources>',
    ...bodies.flatMap(object),
    '  </resources>',
    '  <build>',
    ...spots(bodies).map(
      ({ object, spot }) => `    <item objectid="${object}" transform="1 0 0 0 1 0 0 0 1 ${spot}"/>`,
    ),
    '  </build>',
    '</model>',
  );

function object({ name, mesh }: NamedMesh, index: number): string[] {
  return [
    `    <object id="${index + 1}" type="model" name="${xmlText(name)}">`,
    '      <mesh>',
    '        <vertices>',
    ...mesh.vertices.map(({ x, y, z }) => {
      return `          <vertex x="${fixed(x, name)}" y="${fixed(y, name)}" z="${fixed(z, name)}"/>`;
    }),
    '        </vertices>',
    '        <triangles>',
    ...mesh.triangles.map(([a, b, c]) => `          <triangle v1="${a}" v2="${b}" v3="${c}"/>`),
    '        </triangles>',
    '      </mesh>',
    '    </object>',
  ];
}

/** Where each body is moved to: in a row along x, all of it where no coordinate is negative, as the specification asks. */
function spots(bodies: readonly NamedMesh[]): { readonly object: number; readonly spot: string }[] {
  let next = 0;
  return bodies.flatMap(({ name, mesh: { vertices }, copies = 1 }, i) => {
    const [x, y, z] = [
      span(vertices.map((vertex) => vertex.x)),
      span(vertices.map((vertex) => vertex.y)),
      span(vertices.map((vertex) => vertex.z)),
    ];
    return Array.from({ length: copies }, () => {
      const spot = [next - x.least, -y.least, -z.least].map((move) => fixed(move, name)).join(' ');
      next += x.most - x.least + APART;
      return { object: i + 1, spot };
    });
  });
}

function span(values: readonly number[]): { readonly least: number; readonly most: number } {
  let [least, most] = [Infinity, -Infinity];
  for (const value of values) [least, most] = [Math.min(least, value), Math.max(most, value)];
  return { least, most };
}

const lines = (...text: readonly string[]): string => `${text.join('\n')}\n`;
