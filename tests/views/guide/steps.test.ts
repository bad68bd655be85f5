import { describe, expect, test } from 'vitest';
import { aimSpread } from '$lib/layout/aimSpread.ts';
import { sideNames, type Project } from '$lib/project/project.ts';
import { measuredOf } from '$lib/project/measured.ts';
import { byTape } from '$lib/project/sure.ts';
import { fieldOf } from '$lib/document/fields.ts';
import { startOwn } from '$lib/document/startOwn.ts';
import { newMonitors } from '$lib/document/templates.ts';
import { figureFit, figureStyle } from '$lib/views/figure/figureFit.ts';
import { guideNumbers } from '$lib/views/guide/numbers.ts';
import { effectText, spreadText, wholeText } from '$lib/views/guide/spreadText.ts';
import { steps } from '$lib/views/guide/steps.ts';
import { dimensionLine } from '$lib/drawing/dimensionLine.ts';
import { toPaper } from '$lib/drawing/place.ts';
import { firstLayout, project } from '../../projects.ts';

const asked = (of: Project, mirrored = true) =>
  steps.flatMap((step) => step.asks(of, firstLayout(of), 0, mirrored).flatMap(({ fields }) => fields));

const spreads = (of: Project) =>
  sideNames.flatMap((side) => aimSpread(of.speaker, firstLayout(of), side, of.sure) ?? []);

describe('the seven steps', () => {
  test('are seven, each with an address of its own', () => {
    expect(steps).toHaveLength(7);
    expect(new Set(steps.map(({ key }) => key)).size).toBe(7);
  });

  test.each([true, false])('ask for numbers that the form has, each once (mirrored: %s)', (mirrored) => {
    const fields = asked(project(), mirrored);
    const pointers = fields.map(({ at }) => at);
    expect(new Set(pointers).size).toBe(pointers.length);
    const names = pointers.filter((at) => at.endsWith('/name'));
    expect(names).toEqual(['/stock/0/name']);
    for (const at of pointers.filter((at) => !names.includes(at))) expect(fieldOf('number', at).label).not.toBe('');
  });

  test('ask once how sure each kind of value is, beside such a value', () => {
    const sure = asked(project()).filter((field) => field.sure !== undefined);
    expect(sure.map((field) => field.sure).toSorted()).toEqual(Object.keys(byTape).toSorted());
    for (const key of Object.keys(byTape)) expect(fieldOf('number', `/sure/${key}`).label).toMatch(/, ±$/);
  });

  test.each([
    ['the example', project(), true],
    ['marks apart', project({ '/layouts/0/placement/right/x': 500 }), false],
    ['two screens', project({ '/layouts/0/monitors': newMonitors(firstLayout(project()), 2) }), true],
    ['a new project', startOwn('mm'), true],
  ])('ask for every value that counts, or for what decides whether there is one: %s', (_, of, mirrored) => {
    // The walls are asked for by one gap.
    const pointers = asked(of, mirrored).map(({ at }) => at.replace('/room/gap', '/room/walls'));
    const left = [...measuredOf(of, 0).values.keys()].filter(
      (at) => !pointers.includes(at) && !(mirrored && at.includes('/placement/left/')),
    );
    const open = of.layouts[0]?.monitors.length === 0 ? ['/layouts/0/monitors', '/speaker/crossovers'] : [];
    expect(left).toEqual(open);
    expect(steps.flatMap(({ choice }) => choice ?? [])).toEqual(['screens', 'lying', 'crossover', 'symmetry']);
  });

  test('ask for no number of a screen where there is none', () => {
    const bare = project({ '/layouts/0/monitors': [] });
    const screen = steps.find(({ key }) => key === 'screen');
    expect(screen?.asks(bare, firstLayout(bare), 0, true)).toEqual([]);
  });
});

describe('the figures', () => {
  const numbers = guideNumbers(project(), firstLayout(project()));

  test.each(steps.map((step) => [step.key, step] as const))('%s: all of it is on its paper', (_key, step) => {
    const figure = step.figure(numbers);
    const { width, height, place } = figureFit(figure);
    const inside = ([x, y]: readonly [number, number]): boolean => x >= 0 && x <= width && y >= 0 && y <= height;
    for (const shape of figure.shapes) {
      const points = shape.kind === 'outline' ? shape.points : shape.kind === 'round' ? [shape.centre] : [shape.at];
      for (const point of points) expect([shape.id, inside(toPaper(place, point))]).toEqual([shape.id, true]);
    }
    for (const { line, text } of figure.dimensions) {
      if (line.kind !== 'dimension') continue;
      const drawn = dimensionLine(line, place, figure.extent, figureStyle, text);
      expect([line.id, inside(drawn.text.at)]).toEqual([line.id, true]);
    }
  });

  test.each(steps.map((step) => [step.key, step] as const))('%s: the project’s own numbers stand on it', (_, step) => {
    const texts = step.figure(numbers).dimensions.map(({ text }) => text);
    expect(texts.every((text) => /\d/.test(text))).toBe(true);
    expect(step.figure(numbers).says.length).toBeGreaterThan(40);
  });
});

describe('what a doubt does, in words', () => {
  test('names only what is worth naming', () => {
    expect(spreadText({ toe: 0, tilt: Math.PI / 180, lift: 0 }, 'mm')).toBe('tilt ±\u202f1.0°');
    expect(spreadText({ toe: 0.0001, tilt: 0, lift: 2.5 }, 'mm')).toBe('lift ±\u202f2.5\u202fmm');
    expect(spreadText({ toe: 0.0001, tilt: 0, lift: 0 }, 'mm')).toBeNull();
  });

  test('says what a value does, or that it does nothing', () => {
    const of = project();
    expect(effectText(spreads(of), 'deskWidth', 'mm')).toBe('no effect on aim');
    expect(effectText(spreads(of), 'earHeight', 'mm')).toMatch(/^tilt ±\u202f\d\.\d°/);
    expect(effectText(spreads(project({ '/sure': { markX: 0 } })), 'markX', 'mm')).toBe('hardly moves the aim');
  });

  test('names the worst of all doubts', () => {
    const zero = Object.fromEntries(Object.keys(byTape).map((key) => [key, 0]));
    expect(wholeText(spreads(project({ '/sure': { ...zero, markY: 10 } })), 'mm').mostly).toBe('markY');
    expect(wholeText(spreads(project({ '/sure': zero })), 'mm')).toEqual({
      text: 'under a twentieth of a degree',
      most: null,
      mostly: null,
    });
  });

  test('the header and the steps name the same value, whatever it is, and no step claims it by itself', () => {
    const zero = Object.fromEntries(Object.keys(byTape).map((key) => [key, 0]));
    for (const key of ['earHeight', 'setback', 'baffleRake', 'markX', 'driverOffset', 'speakerDepth'] as const) {
      const each = spreads(project({ '/sure': { ...zero, deskHeight: 2, markY: 2, [key]: 40 } }));
      expect(wholeText(each, 'mm').mostly).toBe(key);
      const named = steps
        .flatMap((step) => step.asks(project(), firstLayout(project()), 0, true).flatMap(({ fields }) => fields))
        .flatMap(({ sure }) =>
          sure !== undefined && effectText(each, sure, 'mm').endsWith('the most of all') ? [sure] : [],
        );
      expect(named).toEqual([key]);
    }
    expect(
      steps
        .flatMap(({ well, how }) => [well.mm, well.in, ...how])
        .filter((text) => /most\b.*\bhangs|hangs on it most|least certain/.test(text)),
    ).toEqual([]);
  });

  test('says both what holds mostly and what holds for certain', () => {
    const { text, most } = wholeText(spreads(project()), 'mm');
    expect(most).toMatch(/^tilt ±\u202f\d+\.\d°, toe ±\u202f\d+\.\d°$/);
    expect(Number(/\d+\.\d/.exec(most ?? '')?.[0])).toBeGreaterThan(Number(/\d+\.\d/.exec(text)?.[0]));
  });
});
