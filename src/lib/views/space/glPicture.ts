import { Geometry, Mesh, Program, Renderer, Transform } from 'ogl';
import type { DimensionStyle } from '$lib/drawing/dimensionStyle.ts';
import { faceBuffers, lineBuffers } from '$lib/drawing/space/buffers.ts';
import type { Palette } from '$lib/drawing/space/colour.ts';
import { matrixOf, type Camera } from '$lib/drawing/space/look.ts';
import type { SpaceScene } from '$lib/drawing/space/space.ts';

/** What a picture is drawn of. */
export interface GlDrawn {
  readonly scene: SpaceScene;
  readonly camera: Camera;
  readonly palette: Palette;
  readonly style: DimensionStyle;
}

/** A picture that the graphics processor draws. */
export interface GlPicture {
  readonly draw: (drawn: GlDrawn) => void;
  readonly release: () => void;
}

const FACE = {
  vertex: `
    attribute vec3 position;
    attribute vec3 colour;
    uniform mat4 looks;
    varying vec3 tint;
    void main() {
      tint = colour;
      gl_Position = looks * vec4(position, 1.0);
    }`,
  fragment: `
    precision mediump float;
    varying vec3 tint;
    void main() {
      gl_FragColor = vec4(tint, 1.0);
    }`,
};

/** A line keeps its width: its corners are moved aside on the picture, and on past its ends, so that edges meet whole. */
const LINE = {
  vertex: `
    attribute vec3 here;
    attribute vec3 there;
    attribute float aside;
    attribute vec3 colour;
    uniform mat4 looks;
    uniform vec2 size;
    varying vec3 tint;
    void main() {
      tint = colour;
      vec4 at = looks * vec4(here, 1.0);
      vec4 to = looks * vec4(there, 1.0);
      vec2 way = (to.xy / to.w - at.xy / at.w) * size;
      vec2 along = length(way) > 0.0 ? normalize(way) : vec2(1.0, 0.0);
      vec2 moved = vec2(-along.y, along.x) * aside - along * abs(aside) * 0.5;
      gl_Position = at + vec4(moved / size * 2.0 * at.w, 0.0, 0.0);
    }`,
  fragment: FACE.fragment,
};

/** A picture on a canvas; null where there is no WebGL to be had. */
export function glPicture(canvas: HTMLCanvasElement): GlPicture | null {
  const asked = { antialias: true, alpha: false };
  // Asked for first: without it the renderer would fail with an error.
  if (!(canvas.getContext('webgl2', asked) ?? canvas.getContext('webgl', asked))) return null;
  const dpr = Math.min(2, window.devicePixelRatio);
  const renderer = new Renderer({ canvas, dpr, autoClear: false, ...asked });
  const { gl } = renderer;
  const looks = { value: [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1] };
  const size = { value: [1, 1] };
  const solid = new Program(gl, { ...FACE, uniforms: { looks }, cullFace: gl.BACK });
  const stroke = new Program(gl, { ...LINE, uniforms: { looks, size }, cullFace: false });
  /** Bodies, what lies on them, lines: what is later is drawn before what it touches. */
  let layers: readonly Geometry[] = [];
  let lines: Geometry | null = null;
  let before: Pick<GlDrawn, 'scene' | 'palette'> | null = null;

  const facesOf = ({ scene, palette }: GlDrawn): readonly Geometry[] =>
    [0, 1].map((layer) => {
      const { position, colour } = faceBuffers(
        scene.faces.filter((face) => face.layer === layer),
        palette,
      );
      return new Geometry(gl, { position: { size: 3, data: position }, colour: { size: 3, data: colour } });
    });

  const linesOf = ({ scene, camera, palette, style }: GlDrawn): Geometry => {
    const { here, there, aside, colour } = lineBuffers(scene.lines, camera, palette, style);
    return new Geometry(gl, {
      here: { size: 3, data: here },
      there: { size: 3, data: there },
      aside: { size: 1, data: aside },
      colour: { size: 3, data: colour },
    });
  };

  const put = (geometry: Geometry, program: Program): void => {
    const scene = new Transform();
    new Mesh(gl, { geometry, program }).setParent(scene);
    renderer.render({ scene, sort: false, frustumCull: false });
  };

  function draw(drawn: GlDrawn): void {
    const { camera, palette } = drawn;
    if (before?.scene !== drawn.scene || before.palette !== palette) {
      for (const geometry of layers) geometry.remove();
      layers = facesOf(drawn);
      before = drawn;
    }
    lines?.remove();
    lines = linesOf(drawn);
    if (renderer.width !== camera.width || renderer.height !== camera.height)
      renderer.setSize(camera.width, camera.height);
    looks.value = matrixOf(camera);
    size.value = [camera.width, camera.height];
    const [r, g, b] = palette.paper;
    gl.clearColor(r / 255, g / 255, b / 255, 1);
    gl.clear(gl.COLOR_BUFFER_BIT | gl.DEPTH_BUFFER_BIT);
    gl.enable(gl.POLYGON_OFFSET_FILL);
    layers.forEach((geometry, layer) => {
      // Pushed back by the depth that a wide line's half covers on a slanting face.
      gl.polygonOffset((layer === 0 ? 2 : 1.5) * dpr, layer === 0 ? 4 : 2);
      put(geometry, solid);
    });
    gl.disable(gl.POLYGON_OFFSET_FILL);
    put(lines, stroke);
  }

  const release = (): void => {
    for (const geometry of layers) geometry.remove();
    lines?.remove();
    gl.getExtension('WEBGL_lose_context')?.loseContext();
  };
  return { draw, release };
}
