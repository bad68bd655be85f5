import { expect, test } from 'vitest';
import { fieldAt } from '$lib/document/fields.ts';
import { concernedBy } from '$lib/solution/findings/concerns.ts';
import type { Finding, FindingCode } from '$lib/solution/findings/finding.ts';
import { findingDocuments } from '$lib/solution/findings/findingDocument.ts';
import { headlineText } from '$lib/solution/findings/headline.ts';
import { findingText, plainFindingText } from '$lib/solution/findings/findingText.ts';
import { sources } from '$lib/solution/findings/sources.ts';
import { wholeFindings } from '$lib/solution/findings/whole.ts';
import { wordings } from '$lib/solution/findings/wordings.ts';
import { solve } from '$lib/solution/solve.ts';
import { MILLIMETRES, type LengthDisplay } from '$lib/project/units.ts';
import { firstLayout, project } from '../../projects.ts';
import { withGap } from '../../rooms.ts';

type Changes = Readonly<Record<string, unknown>>;

const tilted = (degrees: number, stand: object): Changes => ({
  '/layouts/0/aim/tilt': { rule: 'as-set', degrees },
  '/layouts/0/stand': { rods: null, ...stand },
});
const lined = { '/speaker/designPoint': { driver: 'tweeter', distance: 1000 } };
const bothAt = (y: number) => ({ '/layouts/0/placement/left/y': y, '/layouts/0/placement/right/y': y });
const pillar = { name: 'pillar', on: 'floor', x: 1000, y: 300, width: 300, depth: 300, height: 800 };
const inwards = { '/layouts/0/placement/left/x': -277, '/layouts/0/placement/right/x': 277 };

/** A project that raises each finding, as changes of the demo. */
const cases: Readonly<Record<FindingCode, Changes>> = {
  'monitor-collision': { '/layouts/0/monitors': [{ x: 0, y: 350, width: 900, height: 365, bottom: 110 }] },
  'monitor-in-sight-line': { '/layouts/0/monitors': [{ x: 0, y: 60, width: 700, height: 400, bottom: 100, depth: 0 }] },
  'close-to-screen': inwards,
  'screen-hidden': inwards,
  'into-wall': { ...withGap(0), ...bothAt(600) },
  'stand-over-edge': bothAt(-40),
  'cabinet-over-edge': {
    ...withGap(null),
    '/layouts/0/placement/right': { x: 430, y: 480 },
    '/layouts/0/listener/earHeight': 1400,
  },
  'into-surface': { '/layouts/0/surfaces': [{ name: 'shelf', y: 300, width: 1200, depth: 240, height: 900 }] },
  'plate-tips': {
    '/layouts/0/surfaces': [{ ...pillar, foot: { width: 150, depth: 150 } }],
    '/layouts/0/placement/right': { x: 1000, y: 320, on: 'pillar' },
  },
  'no-stop': {
    '/layouts/0/surfaces': [{ name: 'shelf', y: 760, width: 1400, depth: 240, height: 1500 }],
    '/layouts/0/placement/right': { x: 430, y: 780, on: 'shelf' },
    ...withGap(null),
    '/layouts/0/stand/lift': 12,
  },
  'close-to-wall': { ...withGap(30), ...bothAt(460) },
  'falls-over': { ...tilted(25, { lift: 12, friction: 2 }), '/speaker/centreOfMass': { depth: 200, height: 200 } },
  tips: tilted(0, { lift: 300, width: 70 }),
  'may-tip': { ...tilted(0, { lift: 150, width: 70 }), '/speaker/mass': null },
  slides: tilted(20, { lift: 12 }),
  'stand-slides': tilted(0, { lift: 60, friction: 0.12 }),
  'idle-mat': {
    '/layouts/0/stand': { lift: 30, feet: 3, recess: { face: 'base', depth: 1.5, border: 12 } },
  },
  inclination: {},
  'axis-misses-head': { '/layouts/0/aim/toe': { rule: 'straight' } },
  'axis-misses-ears': { ...lined, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -20 } },
  'lobe-unknown': { '/speaker/designPoint': { rule: 'none' }, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: 0 } },
  'time-difference': { '/layouts/0/listener/offset': 90 },
  'level-difference': { '/layouts/0/listener/offset': 90 },
  'triangle-angle': {},
  'cut-by-hand': { '/layouts/0/stand/build': 'solid', '/layouts/0/stand/rods': null },
  'crossover-sum': { ...lined, '/layouts/0/aim/tilt': { rule: 'as-set', degrees: -15 } },
  'treble-off-axis': { '/layouts/0/aim/toe': { rule: 'as-set', degrees: -25 } },
  'early-reflection': {},
  'posture-missed': {},
  'posture-suffers': { '/layouts/0/listener/offset': 90 },
  'posture-triangle': {},
};

const codes = Object.keys(wordings) as FindingCode[];

function findingsOf(changes: Changes): Finding[] {
  const of = project(changes);
  const planned = solve(of, firstLayout(of));
  if (!planned.ok) throw new Error(planned.faults.map(({ pointer }) => pointer).join());
  return [...planned.value.findings];
}

const inches: readonly LengthDisplay[] = [
  { length: 'in', fraction: null },
  { length: 'in', fraction: 16 },
];

test.each(codes)('%s is raised, and said in mm and in inches', (code) => {
  const raised = findingsOf(cases[code]).filter((one) => one.code === code);
  expect(raised).not.toEqual([]);
  for (const finding of wholeFindings(raised)) {
    const { value, limit, source } = finding;
    expect(Number.isFinite(value) && Number.isFinite(limit)).toBe(true);
    expect(sources[source]).not.toBe('');
    const lengths = Object.values(finding.quantities).filter(({ unit }) => unit === 'mm');
    // What the form marks is there to be marked.
    for (const pointer of concernedBy(finding, 0)) expect([pointer, fieldAt(pointer)?.label]).not.toContain(undefined);
    // The title block's line: short, whole, and in the unit asked for.
    const short = headlineText(finding, MILLIMETRES);
    expect(short).toMatch(/^[A-Z].*\.$/);
    expect(short).not.toMatch(/undefined|NaN|\{/);
    expect(short.length).toBeLessThan(80);
    const metric = findingText(finding, MILLIMETRES);
    expect(metric).toMatch(/^[A-Z].*\.$/);
    expect(metric).not.toMatch(/undefined|NaN|\{|″/);
    expect(plainFindingText(finding)).toBe(metric.replaceAll('\u202f', ' ').replaceAll('−', '-'));
    for (const display of inches) {
      const text = findingText(finding, display);
      expect(headlineText(finding, display)).not.toMatch(/\d\smm\b/);
      expect(text).toMatch(/^[A-Z].*\.$/);
      expect(text).not.toMatch(/undefined|NaN|\{|\d\smm\b/);
      // What is told in mm is told in inches, and nothing else is.
      expect(text === metric).toBe(lengths.length === 0 && !finding.advice);
    }
  }
});

test('a finding of a name that looks like a place in a sentence keeps it', () => {
  const named = { '/speaker/drivers/0/name': '{0} 25 mm', '/speaker/crossovers/0/between/0': '{0} 25 mm' };
  const aim = { '/layouts/0/aim/through': '{0} 25 mm' };
  const [told] = findingsOf({ ...cases['treble-off-axis'], ...named, ...aim }).filter(
    ({ code }) => code === 'treble-off-axis',
  );
  expect(told && findingText(told, { length: 'in', fraction: 16 })).toContain(
    'off the axis of the {0} 25 mm of the left',
  );
});

test('in the document a finding has its quantities in their units, its source, and its sentence in mm', () => {
  const [steep] = findingDocuments(findingsOf({}).filter(({ code }) => code === 'inclination'));
  expect(steep).toMatchObject({
    code: 'inclination',
    level: 'note',
    sides: ['left', 'right'],
    quantities: { angle: { unit: '°' }, most: { value: 10, unit: '°' } },
    limit: 10,
    unit: '°',
    source: 'ITU-R BS.1116-3, as a model',
  });
  expect(steep?.quantities.angle?.value).toBe(steep?.value);
  expect(steep?.text).toMatch(/^Each axis rises 14\.7° towards the ear; 10° is the most/);
  const asText = JSON.stringify(findingDocuments(findingsOf({})));
  expect(JSON.stringify(JSON.parse(asText))).toBe(asText);
});
