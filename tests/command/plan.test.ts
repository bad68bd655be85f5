import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planFile } from '$lib/files/planFile.ts';
import { solve } from '$lib/solution/solve.ts';
import { bringUpToDate } from '../../tools/bundle.mjs';
import { demoWith, firstLayout, project } from '../projects.ts';

const bundle = fileURLToPath(new URL('../../dist/plan.js', import.meta.url));
let folder = '';

beforeAll(() => {
  expect(bringUpToDate()).toBe(true);
  folder = mkdtempSync(join(tmpdir(), 'wedgewright-'));
}, 60_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly lines: readonly string[];
}

function run(...words: string[]): Run {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bundle, ...words], {
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status, out: stdout, lines: stderr.split('\n').filter((line) => line !== '') };
}

/** The demo's files, written once for the tests that only look at them. */
let demoRun: (Run & { readonly folder: string }) | null = null;
function demoFiles(): Run & { readonly folder: string } {
  const out = join(folder, 'made', 'new');
  demoRun ??= { ...run(projectFile(), '--out', out), folder: out };
  return demoRun;
}

let count = 0;
function file(content: string | Buffer): string {
  const path = join(folder, `project-${count++}.json`);
  writeFileSync(path, content);
  return path;
}
const projectFile = (changes: Record<string, unknown> = {}): string => file(JSON.stringify(demoWith(changes)));

function everyFile(below: string): string[] {
  return readdirSync(below, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(below.length + 1))
    .sort();
}

describe('a sound project', () => {
  test('prints the plan that the kernel makes', () => {
    const { status, out, lines } = run(projectFile());
    expect(status).toBe(0);
    expect(lines).toEqual([]);
    const of = project();
    const solved = solve(of, firstLayout(of));
    if (!solved.ok || !solved.value.sheets.ok) throw new Error('the demo has a plan and sheets');
    expect(out).toBe(planFile(solved.value, solved.value.sheets.value));
    expect(JSON.parse(out)).toMatchObject({ format: 'wedgewright/plan', version: 2, layout: 'window side' });
  });

  test('writes the plan, every part and every sheet as SVG and DXF, and what goes to the bench', () => {
    const { folder: out, ...printed } = demoFiles();
    expect(printed.status).toBe(0);
    expect(readFileSync(join(out, 'plan.json'), 'utf8')).toBe(printed.out);
    const document = JSON.parse(printed.out) as { sheets: { placements: unknown[] }[] };
    expect(document.sheets.reduce((sum, sheet) => sum + sheet.placements.length, 0)).toBe(108);
    const drawn = (stem: string): string[] => [`${stem}.dxf`, `${stem}.svg`];
    const sheets = everyFile(join(out, 'sheets')).map((path) => `sheets/${path}`);
    const stems = [...new Set(sheets.map((path) => path.replace(/\.(dxf|svg)$/, '')))];
    expect(sheets).toEqual(stems.flatMap(drawn).sort());
    const times = stems.map((stem) => Number(/^sheets\/MDF 3 mm-\d+(?: cut (\d+) times)?$/.exec(stem)?.[1] ?? 1));
    expect(times.reduce((sum, count) => sum + count, 0)).toBe(document.sheets.length);
    const tools = [
      'build-sheet.pdf',
      'sight-card.pdf',
      'sight-card.svg',
      ...['coupons/coupon MDF 3 mm', 'gauges/baffle-gauge', 'gauges/wedge-gauge'].flatMap(drawn),
    ];
    const bench = [
      'templates/slice.pdf',
      'solids/stand.stl',
      'solids/stands.3mf',
      'cut-list.csv',
      'materials.csv',
      'manifest.json',
      ...tools,
    ];
    const parts = ['parts/slice.dxf', 'parts/slice.svg'];
    expect(everyFile(out)).toEqual(['plan.json', 'project.json', ...parts, ...sheets, ...bench].sort());
  });

  test('gives the same bytes every time', () => {
    const [a, b] = [demoFiles().folder, join(folder, 'b')];
    run(projectFile(), '--out', b);
    expect(everyFile(b)).toEqual(everyFile(a));
    const differs = (path: string): boolean => !readFileSync(join(b, path)).equals(readFileSync(join(a, path)));
    expect(everyFile(a).filter(differs)).toEqual([]);
  });

  test('plans the layout that is named, and says which there are', () => {
    const demo = demoWith() as { layouts: object[] };
    const two = {
      ...demo,
      layouts: [...demo.layouts, { ...demo.layouts[0], name: 'by the door', aim: { through: 'woofer' } }],
    };
    const path = file(JSON.stringify(two));
    expect(JSON.parse(run(path, '--layout', 'by the door').out)).toMatchObject({ layout: 'by the door' });
    expect(run(path, '--layout', 'attic')).toEqual({
      status: 2,
      out: '',
      lines: ['/: expected the name of a layout ("window side", "by the door"), got "attic"'],
    });
  });

  test('findings do not change the exit status', () => {
    const { status, out } = run(projectFile({ '/layouts/0/placement/right': { x: 690, y: 300 } }));
    expect(status).toBe(0);
    expect(out).toContain('"stand-over-edge"');
  });
});

describe('bad input: status 2, one line a fault, nothing written', () => {
  const cases: [string, () => string, string | RegExp][] = [
    [
      'a negative width',
      () => projectFile({ '/layouts/0/desk/outline/width': -5 }),
      '/layouts/0/desk/outline/width: expected a length over 0 mm, got -5',
    ],
    [
      'a file that is not there',
      () => join(folder, 'none.json'),
      /^\/: expected a project file, got ".*none\.json", which is not there$/,
    ],
    ['a folder', () => folder, /which is not a file$/],
    ['text that is not JSON', () => file('width: 165'), '/: expected JSON, got "width: 165"'],
    [
      'bytes that are not text',
      () => file(Buffer.from([0xff, 0xfe, 0x00])),
      '/: expected text in UTF-8, got other bytes',
    ],
    ['an empty file', () => file(''), '/: expected JSON, got ""'],
    [
      '50 MB',
      () => file(Buffer.alloc(50_000_000, ' ')),
      '/: expected a project file of at most 4 MB, got one of 50.0 MB',
    ],
    [
      'a newer version',
      () => projectFile({ '/version': 9 }),
      '/version: expected 2 or lower, got 9: a newer Wedgewright wrote this file',
    ],
    [
      'a thin end under its minimum',
      () => projectFile({ '/layouts/0/stand/lift': 2 }),
      /^\/layouts\/0\/stand\/lift: expected a thin end of at least 3 mm/,
    ],
    [
      'a head in a cabinet',
      () =>
        projectFile({
          '/layouts/0/listener': { setback: -320, earHeight: 900, offset: 430 },
          '/layouts/0/aim': { through: 'tweeter', toe: { rule: 'straight' }, tilt: { rule: 'as-set', degrees: 0 } },
        }),
      /^\/layouts\/0\/listener: expected a head outside the cabinets/,
    ],
  ];
  test.each(cases)('%s', (_, path, line) => {
    const out = join(folder, `never-${count}`);
    const { status, out: printed, lines } = run(path(), '--out', out);
    expect(status).toBe(2);
    expect(printed).toBe('');
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(line);
    expect(existsSync(out)).toBe(false);
  });

  test('several faults come as several lines', () => {
    const { status, lines } = run(projectFile({ '/layouts/0/desk/outline/width': -5, '/speaker/depth': 'deep' }));
    expect(status).toBe(2);
    expect(lines).toHaveLength(2);
  });

  test.each([[[]], [['a', 'b']], [['x.json', '--colour']], [['x.json', '--out', '']]])(
    'words that are off: %j',
    (words) => {
      const { status, lines } = run(...words);
      expect(status).toBe(2);
      expect(lines.at(0)).toMatch(/^\/: /);
      expect(lines.join('\n')).toContain('usage:');
    },
  );
});

describe('no answer: status 3', () => {
  test.each<[string, Record<string, unknown>, RegExp]>([
    [
      'an axis that cannot reach the ear',
      { '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 40 } },
      /^\/layouts\/0\/aim\/tilt\/degrees: expected a tilt that leaves a lift of 0 mm or more/,
    ],
    ['a rod hole that cannot fit', { '/layouts/0/stand/rods': { diameter: 40 } }, /^\/layouts\/0\/stand\/rods/],
    [
      'a part larger than its sheet',
      { '/stock/0/sheet': { width: 150, height: 120 } },
      /^\/stock\/0\/sheet: expected a sheet of at least/,
    ],
  ])('%s', (_, changes, line) => {
    const out = join(folder, `none-${count}`);
    const { status, out: printed, lines } = run(projectFile(changes), '--out', out);
    expect(status).toBe(3);
    expect(printed).toBe('');
    for (const one of lines) expect(one).toMatch(line);
    expect(existsSync(out)).toBe(false);
  });

  test('a mistake of the program, told as one, without a trace', () => {
    const spoilt = join(folder, 'spoilt.mjs');
    writeFileSync(spoilt, `Math.atan2 = () => { throw new Error('no ink'); };`);
    const words = ['--import', pathToFileURL(spoilt).href, bundle, projectFile(), '--out', join(folder, 'none')];
    const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8', timeout: 60_000 });
    expect([status, stdout]).toEqual([3, '']);
    expect(stderr).toMatch(/^\/\S+: these values could not be worked out.*\(no ink\)[^\n]*\n$/);
    expect(existsSync(join(folder, 'none'))).toBe(false);
  });
});

describe('writing', () => {
  test('a folder in the place of a file leaves everything as it was', () => {
    const out = join(folder, 'blocked');
    mkdirSync(join(out, 'parts', 'slice.svg'), { recursive: true });
    writeFileSync(join(out, 'plan.json'), 'mine');
    const { status, lines } = run(projectFile(), '--out', out);
    expect(status).toBe(2);
    expect(lines[0]).toMatch(/^\/: expected a folder that can be written to/);
    expect(readFileSync(join(out, 'plan.json'), 'utf8')).toBe('mine');
    expect(everyFile(out)).toEqual(['plan.json']);
  });

  // Node's own way to make a folder with those above it never comes back from the first of these.
  test.skipIf(process.platform !== 'linux').each(['/proc/made-here', '/proc/made-here/below', '/dev/null/below'])(
    '%s is refused before anything is worked out',
    (out) => {
      // What would take the geometry's answer, or refuse it with status 3, is not reached.
      const source = projectFile({ '/layouts/0/aim/tilt': { rule: 'lift-to-ear', degrees: 40 } });
      const { status, out: printed, lines } = run(source, '--out', out);
      expect([status, printed]).toEqual([2, '']);
      expect(lines).toHaveLength(1);
      expect(lines[0]).toContain(`/: expected a folder that can be written to, got "${out}": E`);
    },
  );

  test('files of an earlier run that no longer belong are named, not removed', () => {
    const out = join(folder, 'again');
    cpSync(demoFiles().folder, out, { recursive: true });
    const { status, lines } = run(projectFile({ '/stock/0/sheet': { width: 1200, height: 800 } }), '--out', out);
    expect(status).toBe(0);
    expect(lines).toContain('note: sheets/MDF 3 mm-5.svg is from an earlier run and does not belong to this plan');
    expect(existsSync(join(out, 'sheets', 'MDF 3 mm-5.svg'))).toBe(true);
  });

  test('names of the user’s making stay below the folder', () => {
    const out = join(folder, 'hostile');
    const { status } = run(projectFile({ '/stock/0/name': '../../<b>board' }), '--out', out);
    expect(status).toBe(0);
    expect(
      everyFile(out).every((path) =>
        /^([\w-]+\.(json|csv|pdf|svg)|(parts|sheets|templates|solids|coupons|gauges)\/[^/]+)$/.test(path),
      ),
    ).toBe(true);
  });
});
