/** A triangle as a binary STL file holds it. */
export interface Facet {
  readonly normal: readonly number[];
  readonly corners: readonly (readonly number[])[];
}

/** A binary STL file by the layout every description of it gives: 80 bytes, a count, 50 bytes for each triangle. */
export function readStl(bytes: Uint8Array): { readonly header: string; readonly facets: Facet[] } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const count = view.getUint32(80, true);
  if (bytes.length !== 84 + 50 * count) throw new Error(`${bytes.length} bytes for ${count} triangles`);
  const facets = Array.from({ length: count }, (_, i) => {
    const numbers = Array.from({ length: 12 }, (_, k) => view.getFloat32(84 + 50 * i + 4 * k, true));
    return { normal: numbers.slice(0, 3), corners: [3, 6, 9].map((k) => numbers.slice(k, k + 3)) };
  });
  return { header: new TextDecoder().decode(bytes.subarray(0, 80)).replace(/\0+$/, ''), facets };
}

/** Volume by the signed tetrahedra over each facet, mm³. */
export function facetVolume(facets: readonly Facet[]): number {
  return facets.reduce((sum, { corners }) => {
    const [[ax = 0, ay = 0, az = 0] = [], [bx = 0, by = 0, bz = 0] = [], [cx = 0, cy = 0, cz = 0] = []] = corners;
    const tetrahedron = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    return sum + tetrahedron / 6;
  }, 0);
}
