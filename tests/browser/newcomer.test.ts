import type { Download, Locator, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useBrowser } from './page.ts';
import { expected, expectSame, shownOf, unzipped } from './taken.ts';

/** What a person with a tape, a rule and a caliper finds at a desk of their own, none of it as in the demo. mm. */
const own = {
  earHeight: 1215,
  setback: 240,
  desk: { width: 1620, depth: 760, height: 722, wallGap: 85 },
  mark: { x: 505, y: 345 },
  cabinet: { width: 182, height: 298, depth: 224 },
  drivers: [
    { diameter: 28, height: 231 },
    { diameter: 118, height: 104 },
  ],
  board: { thickness: 4.12, width: 720, height: 510 },
  kerf: 0.16,
} as const;

/** The groups of the form in their order: whether one must be opened first, and what is typed there. */
const form: readonly {
  readonly opens?: string;
  readonly foldedOn?: 'phone';
  readonly values: Readonly<Record<string, number>>;
}[] = [
  { values: { '/layouts/0/listener/earHeight': own.earHeight, '/layouts/0/listener/setback': own.setback } },
  {
    opens: 'Desk and wall',
    foldedOn: 'phone',
    values: {
      '/layouts/0/desk/outline/width': own.desk.width,
      '/layouts/0/desk/outline/depth': own.desk.depth,
      '/layouts/0/desk/height': own.desk.height,
      '/layouts/0/room/gap': own.desk.wallGap,
    },
  },
  {
    opens: 'Placement',
    foldedOn: 'phone',
    values: { '/layouts/0/placement/right/x': own.mark.x, '/layouts/0/placement/right/y': own.mark.y },
  },
  {
    opens: 'Loudspeaker',
    foldedOn: 'phone',
    values: {
      '/speaker/width': own.cabinet.width,
      '/speaker/height': own.cabinet.height,
      '/speaker/depth': own.cabinet.depth,
    },
  },
  {
    opens: 'Drivers',
    values: {
      '/speaker/drivers/0/diameter': own.drivers[0].diameter,
      '/speaker/drivers/0/height': own.drivers[0].height,
      '/speaker/drivers/1/diameter': own.drivers[1].diameter,
      '/speaker/drivers/1/height': own.drivers[1].height,
    },
  },
  {
    opens: 'Stock',
    values: {
      '/stock/0/thickness': own.board.thickness,
      '/stock/0/sheet/width': own.board.width,
      '/stock/0/sheet/height': own.board.height,
    },
  },
  { opens: 'Cutter', values: { '/cutter/kerf': own.kerf } },
];

/** What the project must hold after that: what was typed, and the left mark as the mirror image of the right one. */
const typed = {
  ...Object.assign({}, ...form.map(({ values }) => values)),
  // The file holds how far the wall is from the desk's front edge.
  '/layouts/0/room/gap': undefined,
  '/layouts/0/room/walls/0/distance': own.desk.depth + own.desk.wallGap,
  '/layouts/0/placement/left/x': -own.mark.x,
  '/layouts/0/placement/left/y': own.mark.y,
};

/** The most that getting to the files may take; a phone folds three more groups of fields. */
const MOST_ACTIONS = { 'at a desk': 25, 'on a phone': 28 } as const;

/** Decimals of a millimetre or a degree. */
const DIGITS = 6;

/** A visitor's hands: each thing done on purpose counts as one, and nothing is done past the counter. */
class Hands {
  readonly done: string[] = [];

  constructor(
    private readonly page: Page,
    readonly touch: boolean,
  ) {}

  /** Goes to a field and types a value over what stands there. */
  async type(pointer: string, value: number): Promise<void> {
    this.done.push(`type ${value} at ${pointer}`);
    await this.page.locator(`[id="${pointer}"]`).fill(String(value));
  }

  /** Opens a group of fields that is folded away. */
  unfold(group: string): Promise<void> {
    return this.press(this.page.locator('summary').getByText(group, { exact: true }), `open ${group}`);
  }

  async download(button: string): Promise<Download> {
    const coming = this.page.waitForEvent('download');
    await this.press(this.page.getByRole('button', { name: button, exact: true }), `press ${button}`);
    return coming;
  }

  private async press(target: Locator, what: string): Promise<void> {
    this.done.push(what);
    await (this.touch ? target.tap() : target.click());
  }
}

/** From the top of the form to its end, and then the files. */
async function measureAndTake(hands: Hands): Promise<Download> {
  for (const { opens, foldedOn, values } of form) {
    if (opens !== undefined && (foldedOn === undefined || hands.touch)) await hands.unfold(opens);
    for (const [pointer, value] of Object.entries(values)) await hands.type(pointer, value);
  }
  return hands.download('Download all as one zip');
}

describe('from the demo to the files of one’s own stands', () => {
  const visit = useBrowser();

  test.each([
    ['at a desk', { viewport: { width: 1440, height: 900 } }],
    ['on a phone', { viewport: { width: 390, height: 844 }, touch: true }],
  ] as const)('%s it takes no more than some 25 deliberate actions', async (where, visitor) => {
    const { page } = await visit('', visitor);
    const hands = new Hands(page, 'touch' in visitor);
    const file = await measureAndTake(hands);
    expect(hands.done.length, hands.done.join('\n')).toBeLessThanOrEqual(MOST_ACTIONS[where]);
    expect(await page.getByRole('region', { name: 'Faults' }).count()).toBe(0);

    const files = await unzipped(file);
    const { 'plan.json': planned, ...cut } = await expected(typed);
    expectSame(JSON.parse(files['plan.json'] ?? ''), JSON.parse(planned ?? ''));
    expect(files).toMatchObject(cut);
    const [sheet] = Object.keys(cut).filter((path) => /^sheets\/.*\.svg$/.test(path));
    expect(cut[sheet ?? '']).toContain(`width="${own.board.width}mm" height="${own.board.height}mm"`);
  });
});

describe('the plan of what was typed', () => {
  const plan = shownOf(typed);

  test('has the head where the tape found it', () => {
    expect(plan.head).toEqual({ x: 0, y: -own.setback, z: own.earHeight - own.desk.height });
  });

  test('turns each loudspeaker from its mark to the head', () => {
    // The drivers lie in the middle of the baffle, so the axis in plan starts over the mark.
    const toe = (Math.atan2(own.mark.x, own.mark.y + own.setback) * 180) / Math.PI;
    for (const { toe: turned, miss } of [plan.sides.left, plan.sides.right]) {
      expect(turned).toBeCloseTo(toe, DIGITS);
      expect(miss).toBeCloseTo(0, DIGITS);
    }
  });

  test('has the drivers as far apart as on the baffle', () => {
    const [high, low] = plan.sides.right.drivers.map(({ position }) => position);
    if (!high || !low) throw new Error('there are two drivers');
    const apart = Math.hypot(high.x - low.x, high.y - low.y, high.z - low.z);
    expect(apart).toBeCloseTo(own.drivers[0].height - own.drivers[1].height, DIGITS);
  });

  test('has stands as wide as the cabinet to the nearest layer, and as long as it is deep', () => {
    const { layers, width, profile } = plan.stand.right;
    expect(layers).toBe(Math.round(own.cabinet.width / own.board.thickness));
    expect(width).toBeCloseTo(Math.round(own.cabinet.width / own.board.thickness) * own.board.thickness, DIGITS);
    const along = profile.map(([u]) => u);
    const tilt = (plan.sides.right.tilt * Math.PI) / 180;
    expect(Math.max(...along) - Math.min(...along)).toBeCloseTo(own.cabinet.depth * Math.cos(tilt), DIGITS);
  });

  test('has the wall where the tape found it', () => {
    const { drivers, reflections } = plan.sides.right;
    const wall = reflections.find(({ surface }) => surface === 'wall:behind');
    const from = drivers.find(({ name }) => name === wall?.driver)?.acousticCentre ?? { x: NaN, y: NaN, z: NaN };
    const aside = Math.hypot(from.x, from.z - plan.head.z);
    const mirrored = 2 * (own.desk.depth + own.desk.wallGap) - from.y;
    const longer = Math.hypot(aside, mirrored - plan.head.y) - Math.hypot(aside, from.y - plan.head.y);
    expect(wall?.pathDifference).toBeCloseTo(longer, DIGITS);
  });
});
