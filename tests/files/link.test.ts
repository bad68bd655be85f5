import { inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_LINK, readLink, writeLink } from '$lib/files/link.ts';
import { withoutDefaults } from '$lib/files/withoutDefaults.ts';
import { LONGEST_FILE, checkProject } from '$lib/project/parse.ts';
import type { Project } from '$lib/project/project.ts';
import { projectSchema } from '$lib/project/schema.ts';
import { faultLine } from '$lib/project/fault.ts';
import { numberFrom } from '../numbers.ts';
import { anyDesk, demoWith, firstLayout, project } from '../projects.ts';
import { runs } from '../runs.ts';
import { rectangularDesk, wallAt } from '../rooms.ts';
import { packed } from './packed.ts';

async function linkOf(of: Project): Promise<string> {
  const written = await writeLink(of);
  if (!written.ok) throw new Error(written.faults.map(faultLine).join());
  return written.value;
}

const textOf = (link: string): string =>
  inflateRawSync(Buffer.from(link.replace('project-1.', ''), 'base64url').subarray(4)).toString('utf8');

const refusal = (reason: string, message: string, pointer = '') => ({
  kind: 'refused',
  reason,
  faults: [{ pointer, message }],
});

const DAMAGED = refusal(
  'damaged',
  'expected a whole link, got one that was cut short or changed on its way: ask for it again, or for a file',
);

describe('a link', () => {
  it('carries a project there and back', async () => {
    const sound = project({ '/title': 'Schräg – <b>"A & B"</b> 😀' });
    const link = await linkOf(sound);
    expect(link).toMatch(/^project-1\.[A-Za-z0-9_-]+$/);
    expect(await readLink(link)).toEqual({ kind: 'project', project: sound });
    expect(await readLink(`#${link}`)).toEqual({ kind: 'project', project: sound });
  });

  it('carries any project there and back', async () => {
    const anyProject = fc
      .record({
        desks: fc.array(anyDesk, { minLength: 1, maxLength: 4 }),
        mass: fc.option(numberFrom(0.1, 50)),
        stop: fc.option(fc.record({ height: numberFrom(1, 500), thickness: numberFrom(1, 200) })),
        rods: fc.option(fc.record({ diameter: numberFrom(1, 60), count: fc.integer({ min: 2, max: 8 }) })),
        length: fc.constantFrom('mm', 'in'),
        temperature: fc.constantFrom(20, 31.5),
      })
      .map(({ desks, mass, stop, rods, length, temperature }) => {
        const layouts = desks.map((changes, index) => ({
          ...firstLayout(
            project({
              ...changes,
              '/layouts/0/stand/stop': stop,
              '/layouts/0/stand/rods': rods,
              '/layouts/0/air/temperature': temperature,
            }),
          ),
          name: `layout ${index}`,
        }));
        return project({ '/layouts': layouts, '/speaker/mass': mass, '/display/length': length });
      });
    await fc.assert(
      fc.asyncProperty(anyProject, async (sound) => {
        expect(await readLink(await linkOf(sound))).toEqual({ kind: 'project', project: sound });
      }),
      { numRuns: runs(60) },
    );
  });

  it('holds JSON that another inflater reads, without what a reader fills in', async () => {
    const sound = project();
    const document: unknown = JSON.parse(textOf(await linkOf(sound)));
    expect(checkProject(document)).toEqual({ ok: true, value: sound });
    expect(document).not.toHaveProperty('cutter');
    expect(document).not.toHaveProperty('display');
    expect(document).not.toHaveProperty('layouts.0.air');
    expect(document).not.toHaveProperty('layouts.0.stand.rods');
    expect(document).not.toHaveProperty('layouts.0.monitors.0.x');
    expect(document).toHaveProperty('layouts.0.stand', { lift: 12 });
  });

  it('of a large project stays under 8 kB', async () => {
    // Values to 0.1 mm, all different, as a tape measure and a caliper give them: the worst that people make.
    const [numbers] = fc.sample(fc.array(fc.integer({ min: 0, max: 999 }), { minLength: 600, maxLength: 600 }), {
      numRuns: 1,
      seed: 8,
    });
    let used = 0;
    const measured = (from: number): number => from + (numbers?.[used++] ?? 0) / 10;
    const layouts = Array.from({ length: 8 }, (_, index) => ({
      ...firstLayout(project()),
      name: `place ${index + 1}, by the window`,
      desk: rectangularDesk(measured(1400), measured(700), measured(700)),
      room: { walls: [wallAt('behind', 0, measured(820))], ceiling: null },
      monitors: Array.from({ length: 4 }, () => ({
        x: measured(-300),
        y: measured(520),
        width: measured(500),
        height: measured(300),
        bottom: measured(80),
        depth: measured(30),
      })),
      listener: {
        offset: measured(-50),
        setback: measured(100),
        earHeight: measured(1100),
        headWidth: measured(120),
        postures: ['leaning in', 'upright', 'leaning back'].map((name) => ({
          name,
          setback: measured(0),
          earHeight: measured(1100),
        })),
      },
      placement: { left: { x: -measured(400), y: measured(250) }, right: { x: measured(400), y: measured(250) } },
      stand: { lift: measured(5), width: measured(120), rearMargin: measured(1), stock: `board ${(index % 6) + 1}` },
    }));
    const stock = Array.from({ length: 6 }, (_, index) => ({
      name: `board ${index + 1}`,
      thickness: 3 + measured(0) / 10,
      sheet: { width: measured(500), height: measured(300) },
      density: measured(600),
    }));
    const large = project({ '/layouts': layouts, '/stock': stock });
    const link = await linkOf(large);
    expect(link.length).toBeLessThan(8000);
    expect(link.length).toBeGreaterThan(1000);
    expect(await readLink(link)).toEqual({ kind: 'project', project: large });
  });

  it('is not made longer than a browser takes', async () => {
    const [noise] = fc.sample(fc.string({ unit: 'grapheme-ascii', minLength: 120_000, maxLength: 120_000 }), {
      numRuns: 1,
      seed: 5,
    });
    // Most of a name may be anything; 40 layouts with 12 postures each are room enough for what does not deflate.
    const word = (at: number): string => `x${(noise ?? '').slice(at * 190, at * 190 + 190)}${at}`;
    const layouts = Array.from({ length: 40 }, (_, index) => {
      const layout = firstLayout(project());
      const postures = Array.from({ length: 12 }, (_unused, at) => ({
        name: word(index * 12 + at),
        setback: 60,
        earHeight: 1150,
      }));
      return { ...layout, name: `layout ${index}`, listener: { ...layout.listener, postures } };
    });
    const written = await writeLink(project({ '/layouts': layouts }));
    expect(written).toMatchObject({ ok: false, faults: [{ pointer: '' }] });
    expect(written.ok ? '' : written.faults[0]?.message).toMatch(
      /^expected a link of at most 60000 characters, got \d{5,}: save the project as a file instead$/,
    );
  });
});

describe('a fragment', () => {
  it.each(['', '#', '#measurements', '#project', 'project-.x', 'project-0.x', '#project-x.AAAA', '#a-project-1.AAAA'])(
    'like %j is no link of ours',
    async (fragment) => {
      expect(await readLink(fragment)).toEqual({ kind: 'none' });
    },
  );

  it('that is too long is refused unread', async () => {
    const long = `#project-1.${'A'.repeat(LONGEST_LINK)}`;
    expect(await readLink(long)).toEqual(
      refusal(
        'too-long',
        `expected a link of at most 60000 characters, got ${long.length}: save the project as a file instead`,
      ),
    );
  });

  it('of a newer packing says so', async () => {
    expect(await readLink('#project-2.AAAA')).toEqual(
      refusal('newer', 'expected a link of this version, got one that a newer Wedgewright made: reload the page'),
    );
  });

  it('that unfolds without end is left when it passes the longest file', async () => {
    const bomb = packed(Buffer.alloc(10 * LONGEST_FILE, 0x20));
    expect(bomb.length).toBeLessThan(LONGEST_LINK);
    expect(await readLink(bomb)).toEqual(
      refusal('too-large', 'expected a link with a project of at most 4 MB, got one with more'),
    );
  });

  it('with a damaged end, middle, alphabet or text is told apart from a bad project', async () => {
    const link = await linkOf(project());
    expect(await readLink(link.slice(0, -4))).toEqual(DAMAGED);
    expect(await readLink(link.slice(0, 'project-1.'.length))).toEqual(DAMAGED);
    expect(await readLink(`${link}=`)).toEqual(DAMAGED);
    expect(await readLink(`${link} and more`)).toEqual(DAMAGED);
    expect(await readLink('project-1.A')).toEqual(DAMAGED);
    expect(await readLink(packed(Uint8Array.of(0x22, 0xff, 0x22)))).toEqual(DAMAGED);
  });

  it('never gives another project when one of its characters has changed', async () => {
    const sound = project();
    const link = await linkOf(sound);
    const at = fc.integer({ min: 'project-1.'.length, max: link.length - 1 });
    await fc.assert(
      fc.asyncProperty(at, fc.constantFrom('A', 'Q', 'z', '0', '-', '_'), async (index, character) => {
        const reading = await readLink(link.slice(0, index) + character + link.slice(index + 1));
        // The last bits of deflate's last byte mean nothing, so some changes change nothing.
        if (reading.kind === 'project') expect(reading.project).toEqual(sound);
        else expect(reading).toEqual(DAMAGED);
      }),
      { numRuns: runs(300) },
    );
  });

  it('with a sound packing and an unsound project gives the faults with their pointers', async () => {
    expect(await readLink(packed(JSON.stringify(demoWith({ '/layouts/0/desk/outline/width': -5 }))))).toEqual(
      refusal('unsound', 'expected a length over 0 mm, got -5', '/layouts/0/desk/outline/width'),
    );
    expect(await readLink(packed(JSON.stringify(demoWith({ '/version': 3 }))))).toEqual(
      refusal('unsound', 'expected 2 or lower, got 3: a newer Wedgewright wrote this file', '/version'),
    );
    expect(await readLink(packed('hello'))).toEqual(refusal('unsound', 'expected JSON, got "hello"'));
  });

  it('may be anything at all', async () => {
    const good = await linkOf(project());
    const spoilt = fc
      .tuple(fc.nat(good.length - 1), fc.constantFrom('A', 'z', '-', '_', '0', '%', '.', '😀'))
      .map(([at, character]) => good.slice(0, at) + character + good.slice(at + 1));
    const anything = fc.oneof(
      fc.string(),
      fc.string().map((text) => `#project-1.${text}`),
      fc.uint8Array({ maxLength: 300 }).map((bytes) => `project-1.${Buffer.from(bytes).toString('base64url')}`),
      fc.jsonValue().map((value) => packed(JSON.stringify(value))),
      spoilt,
    );
    await fc.assert(
      fc.asyncProperty(anything, async (fragment) => {
        const reading = await readLink(fragment);
        if (reading.kind === 'refused') expect(reading.faults[0]?.message).toMatch(/^expected|^unknown key/);
        if (reading.kind === 'project') expect(checkProject(reading.project).ok).toBe(true);
      }),
      { numRuns: runs(400) },
    );
  });
});

describe('a document without its defaults', () => {
  it('keeps a value that only looks like a default', () => {
    const kept = withoutDefaults(
      project({ '/layouts/0/stand/stop': null, '/layouts/0/stand/rods': null }),
      projectSchema,
    );
    // No rods is not the default; no stop is.
    expect(kept).toHaveProperty('layouts.0.stand.rods', null);
    expect(kept).not.toHaveProperty('layouts.0.stand.stop');
    expect(kept).toHaveProperty('format', 'wedgewright/project');
    expect(kept).toHaveProperty('version', 2);
  });

  it('keeps the rest of an object when one of its values is not the default', () => {
    const kept = withoutDefaults(
      project({ '/cutter/kerf': 0.3, '/layouts/0/stand/rods': { count: 3 } }),
      projectSchema,
    );
    expect(kept).toHaveProperty('cutter', { kerf: 0.3 });
    expect(kept).toHaveProperty('layouts.0.stand.rods', { count: 3 });
  });
});
