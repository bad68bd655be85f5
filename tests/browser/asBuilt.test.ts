import type { Locator, Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { mendByTurning } from '$lib/proof/mend.ts';
import type { Standing } from '$lib/proof/standing.ts';
import type { Taken } from '$lib/proof/taken.ts';
import { blank, off, planned, taken } from '../proof/stands.ts';
import { useBrowser } from './page.ts';

const visit = useBrowser();

/** The demo's right stand, built a little off: the page must find that out from its readings. */
const it = planned('right');
const real = off(it.plan, [4, -3, 1.5, -1.2, 0.8, 0]);
const usual = [blank.front, blank.rear, blank.slope, blank.toe, blank.mark, blank.driver] as const;

/** The fields of a reading by their names on the page, with what is read there. */
function linesOf(reading: Taken): readonly (readonly [name: string, value: number])[] {
  switch (reading.what) {
    case 'front-height':
      return [['Stand, front height', reading.value]];
    case 'rear-height':
      return [['Stand, rear height', reading.value]];
    case 'slope':
      return [['Slope by level', reading.value]];
    case 'toe':
      return [['Toe by protractor', reading.value]];
    case 'driver-height':
      return [['Tweeter’s centre, height', reading.value]];
    case 'mark':
      return [
        ['Mark, sideways', reading.x],
        ['Mark, from the edge', reading.y],
      ];
    default:
      throw new Error(`${reading.what} is not one of the usual readings`);
  }
}

const field = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });

/** Reads the stand with tape and rule, to a tenth. */
async function read(page: Page, standing: Standing): Promise<void> {
  for (const [name, value] of taken(usual, standing, it).flatMap(linesOf)) {
    await field(page, name).fill(value.toFixed(1));
  }
}

const begin = (page: Page) => page.getByRole('button', { name: 'Begin with the usual readings' });
const done = (page: Page) => page.getByRole('button', { name: 'Done, take new readings' });
const steps = (page: Page) => page.locator('.todo ol > li').first();

describe('finished stands', () => {
  test('are read, mended by a card and a turn, and read again: better, with both on record', async () => {
    const { page, expectAccessible } = await visit('as-built/', { viewport: { width: 1440, height: 900 } });
    await begin(page).press('Enter');
    // Too few readings: which one more would do.
    await field(page, 'Stand, front height').fill('50');
    await expect.poll(() => page.locator('.todo').textContent()).toContain('is not known yet');
    await read(page, real);
    await done(page).waitFor();
    const [card, turn] = mendByTurning(it.cabinet, real, it.head) ?? [];
    if (card?.act !== 'shim' || turn?.act !== 'turn') throw new Error('a card and a turn mend it');
    const told = await page.locator('.todo').innerText();
    const [, millimetres, edge] = /Lay ([\d.]+)\smm of card under the cabinet’s (front|rear) edge/.exec(told) ?? [];
    expect(edge).toBe(card.where);
    // Readings in tenths leave the card open by some tenths.
    expect(Math.abs(Number(millimetres) - card.by)).toBeLessThan(0.5);
    const [, degrees, way] = /Turn the stand ([\d.]+)° (towards|away)/.exec(told) ?? [];
    expect(way).toBe(turn.by > 0 ? 'towards' : 'away');
    expect(Math.abs(Number(degrees) - Math.abs((turn.by * 180) / Math.PI))).toBeLessThan(0.3);
    await expect
      .poll(() => page.locator('.verdict').textContent())
      .toMatch(/inside the safe zone|outside the safe zone/);
    await page.getByText('How each reading fits the rest').click();
    await expectAccessible('light and dark');
    await done(page).press('Enter');
    await expect.poll(() => field(page, 'Stand, front height').inputValue()).toBe('');
    await read(page, turn.standing);
    await expect.poll(() => page.locator('.todo').innerText()).toContain('Leave it.');
    await expect
      .poll(() => steps(page).innerText())
      .toMatch(
        /\d+\smm ± \d+\smm → \d+\smm ± \d+\smm\s+[\d.]+\smm of card, (front|rear) edge; turned (in|out) [\d.]+°/,
      );
    const [, was, now] = /(\d+)\smm ± \d+\smm → (\d+)\smm/.exec(await steps(page).innerText()) ?? [];
    expect(Number(now)).toBeLessThan(Number(was));
    // One step of undo takes back the last field, and the record stays.
    await page.getByRole('button', { name: /^Undo/ }).first().click();
    await expect.poll(() => field(page, 'Tweeter’s centre, height').inputValue()).toBe('');
    expect(await page.locator('.todo ol > li b').first().textContent()).toMatch(/^\d{4}-\d\d-\d\d$/);
  });

  test('name a reading that contradicts the rest, and say what is wrong with one that cannot be', async () => {
    const { page } = await visit('as-built/');
    await begin(page).press('Enter');
    await read(page, real);
    const add = async (name: string, kind: Taken): Promise<void> => {
      await page.getByRole('combobox', { name: 'Kind of reading' }).selectOption({ label: name });
      await page.getByRole('button', { name: 'Add this reading' }).press('Enter');
      const [corner] = taken([kind], real, it);
      if (corner?.what !== 'corner') throw new Error('a corner');
      await field(page, `${name}, sideways`).fill(corner.x.toFixed(1));
      await field(page, `${name}, from the edge`).fill(corner.y.toFixed(1));
    };
    await add('Cabinet’s rear outer corner', blank.corner);
    const protractor = field(page, 'Toe by protractor');
    await protractor.fill('62');
    // Mark, corner and protractor: one of them must be wrong, and nothing tells which.
    await page.getByText('These readings cannot all be right').waitFor();
    await add('Cabinet’s front inner corner', blank.inner);
    await page.locator('.odd[role=status]').waitFor();
    await expect
      .poll(() => page.locator('.odd[role=status]').innerText())
      .toMatch(/“toe by protractor” contradicts the rest, which say [\d.]+°/);
    await protractor.fill('far');
    await protractor.press('Enter');
    await expect.poll(() => page.locator('.fault', { hasText: 'Enter −90 to 90°' }).count()).toBe(1);
    expect(await protractor.getAttribute('aria-invalid')).toBe('true');
    // Nothing of the rest is lost.
    expect(await field(page, 'Mark, sideways').inputValue()).toMatch(/^\d/);
    await page.getByRole('button', { name: 'Remove Toe by protractor' }).press('Enter');
    await expect.poll(() => page.locator('.odd[role=status]').count()).toBe(0);
    await done(page).waitFor();
  });

  test('are read on a phone too, in inches, each side for itself', async () => {
    const { page, expectAccessible } = await visit('as-built/', { viewport: { width: 390, height: 844 }, touch: true });
    await page.getByLabel('Show lengths in').selectOption('in');
    await page.getByText('Left', { exact: true }).tap();
    await begin(page).tap();
    await field(page, 'Stand, front height').fill('2 1/2');
    await field(page, 'Stand, front height').press('Enter');
    await page.getByRole('combobox', { name: 'Stand, front height, read with' }).selectOption('caliper');
    await expect.poll(() => field(page, 'Stand, front height, sure to, plus or minus').inputValue()).toBe('0.0039');
    await page.getByText('Right', { exact: true }).tap();
    await begin(page).waitFor();
    await page.getByText('Left', { exact: true }).tap();
    await expect.poll(() => field(page, 'Stand, front height').inputValue()).toBe('2.5');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await expectAccessible('light and dark');
  });

  test('have their slope read by a phone’s own level, turned round; where there is none, or it is refused, the page says so', async () => {
    const { page, expectAccessible } = await visit('as-built/', { viewport: { width: 390, height: 844 }, touch: true });
    const press = page.getByRole('button', { name: 'Read the phone’s level' });
    const answer = (said: string): Promise<void> =>
      page.evaluate((word) => {
        Reflect.set(DeviceOrientationEvent, 'requestPermission', () => Promise.resolve(word));
      }, said);
    await answer('denied');
    await press.tap();
    await page.getByText('The phone was told not to let this page read its tilt.').waitFor();
    await answer('granted');
    await press.tap();
    // There is no sensor.
    await page.getByText('No tilt comes from this device').waitFor();
    await shows(press, 15.6);
    await shows(page.getByRole('button', { name: 'It is turned round' }), -14.4);
    await page.getByText('Slope 15.0° ± 0.2°; the phone’s own zero was 0.6° off').waitFor();
    await expectAccessible();
    await page.getByRole('button', { name: 'Take it as the slope' }).tap();
    await expect.poll(() => field(page, 'Slope by level').inputValue()).toBe('15');
    await expect.poll(() => field(page, 'Slope by level, sure to, plus or minus').inputValue()).toBe('0.2');
  });
});

describe('measured responses', () => {
  const file = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
  /** By the desk, from the demo's right tweeter to the head, s. */
  const DELAY = 0.7943508944e-3;
  const comb = Array.from({ length: 2000 }, (_, i) => 30 + 10 * i)
    .map((f) => `${f}\t${(80 + 10 * Math.log10(1.526 + 1.45 * Math.cos(2 * Math.PI * f * DELAY))).toFixed(3)}`)
    .join('\r\n');
  const unsure = Array.from({ length: 200 }, (_, i) => `1,${100 + i};80`).join('\n');

  test('are read several at once, asked about, kept, and laid over the prediction with the surface of each dip', async () => {
    const { page, expectAccessible } = await visit('as-built/', { viewport: { width: 390, height: 844 }, touch: true });
    const heard = page.getByRole('region', { name: 'As heard' });
    const files = heard.getByRole('list', { name: 'Files to keep' });
    const rowOf = (name: string) => files.getByRole('listitem').filter({ hasText: name });
    await heard.waitFor();
    await heard
      .locator('input[type=file]')
      .setInputFiles([file('empty.txt', ''), file('unsure.csv', unsure), file('seat.txt', comb)]);
    await expect.poll(() => rowOf('empty.txt').textContent()).toContain('got an empty file');
    await expect.poll(() => rowOf('unsure.csv').textContent()).toContain('In line 1 stands “1,100”');
    await rowOf('unsure.csv').getByRole('button', { name: 'It is 1100 Hz' }).tap();
    await expect.poll(() => rowOf('unsure.csv').textContent()).toContain('expected an octave or more');
    const row = rowOf('seat.txt');
    await expect.poll(() => row.textContent()).toContain('2000 frequencies; tabs or spaces between columns');
    const keep = row.getByRole('button', { name: 'Keep seat.txt' });
    // Nothing is guessed: whose sound, and where.
    await expect.poll(() => keep.isDisabled()).toBe(true);
    await row.getByLabel('Plays').selectOption('right');
    await row.getByLabel('Microphone').selectOption('seat');
    await keep.tap();
    const explained = heard.getByRole('list', { name: 'Dips that are explained' });
    await expect.poll(() => explained.textContent()).toMatch(/3\.1\d?\skHz, [\d.]+\sdB deep desk/);
    await expect.poll(() => heard.getByRole('list', { name: 'Dips that nothing explains' }).count()).toBe(1);
    await expect.poll(() => heard.getByRole('img', { name: /^Measured response over the predicted one: \d+ dips/ }).count()).toBe(1); // prettier-ignore
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await expectAccessible('light and dark');
    await page.getByRole('button', { name: /^Undo/ }).first().tap();
    await expect.poll(() => explained.count()).toBe(0);
  });
});

/** Presses, and has the phone lie still so steep, degrees, as soon as the page listens. */
const shows = (button: Locator, beta: number): Promise<void> =>
  button.evaluate(async (pressed, steep) => {
    if (pressed instanceof HTMLElement) pressed.click();
    await new Promise((resolve) => setTimeout(resolve));
    for (let i = 0; i < 30; i += 1)
      window.dispatchEvent(new DeviceOrientationEvent('deviceorientation', { beta: steep }));
  }, beta);
