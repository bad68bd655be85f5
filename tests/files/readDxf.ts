import DxfParser, { type ICircleEntity, type IEntity, type ILwpolylineEntity } from 'dxf-parser';
import type { Contour } from '$lib/geometry/contour.ts';
import { layerNames, type LayerName } from '$lib/files/plate.ts';

export interface ReadDxf {
  readonly header: Record<string, unknown>;
  readonly layers: Record<LayerName, Contour[]>;
}

const isCircle = (entity: IEntity): entity is ICircleEntity => entity.type === 'CIRCLE';
const isPolyline = (entity: IEntity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE';
const isLayer = (name: string): name is LayerName => layerNames.some((layer) => layer === name);

/** A DXF document as dxf-parser reads it, its entities as contours. */
export function readDxf(text: string): ReadDxf {
  const document = new DxfParser().parseSync(text);
  if (!document) throw new Error('no DXF document');
  const layers: Record<LayerName, Contour[]> = { engrave: [], inside: [], outside: [] };
  for (const entity of document.entities) {
    if (!isLayer(entity.layer)) throw new Error(`unknown layer ${entity.layer}`);
    layers[entity.layer].push(contourOf(entity));
  }
  return { header: document.header, layers };
}

/** The layers of a DXF document, as dxf-parser reads them. */
export function readDxfLayers(text: string): Record<string, { readonly colorIndex: number }> {
  const document = new DxfParser().parseSync(text);
  if (!document?.tables.layer) throw new Error('no layers');
  return document.tables.layer.layers;
}

function contourOf(entity: IEntity): Contour {
  if (isCircle(entity)) {
    return { kind: 'circle', centre: [entity.center.x, entity.center.y], radius: entity.radius };
  }
  if (!isPolyline(entity)) throw new Error(`unexpected ${entity.type}`);
  const vertices = entity.vertices.map(({ x, y, bulge }) => ({ x, y, bulge: bulge ?? 0 }));
  return { kind: 'path', closed: entity.shape, vertices };
}
