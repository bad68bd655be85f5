import { expect, test, vi } from 'vitest';
import type { KeptReading } from '$lib/files/response/readKept.ts';
import { ResponseQueue } from '$lib/views/proof/heard/responseQueue.svelte.ts';

const REFUSED: KeptReading = { kind: 'refused', message: 'no' };
const ASK: KeptReading = { kind: 'ask', line: 1, field: '1,100', decimal: 1.1, thousands: 1100 };
const text = (name: string): File => new File(['20 80'], name);

function queue() {
  const asked: { of: object; commas: string | null }[] = [];
  const cancel = vi.fn();
  const client = {
    askAnew: (of: object, { commas }: { commas: string | null }) => void asked.push({ of, commas }),
    cancel,
  };
  return { of: new ResponseQueue(client), asked, cancel };
}
const states = (of: ResponseQueue) => of.files.map(({ name, state }) => [name, state.kind]);
const askedFor = async (asked: readonly { of: object }[], count: number): Promise<object> => {
  await vi.waitFor(() => expect(asked).toHaveLength(count));
  return asked[count - 1]?.of ?? {};
};

test('files are read one after the other, and a bad one keeps none from being read', async () => {
  const { of, asked } = queue();
  of.add([text('a'), text('b')]);
  expect(states(of)).toEqual([['a', 'reading'], ['b', 'waiting']]); // prettier-ignore
  of.take(await askedFor(asked, 1), REFUSED);
  expect(states(of)).toEqual([['a', 'refused'], ['b', 'reading']]); // prettier-ignore
  of.take(await askedFor(asked, 2), ASK);
  expect(states(of)).toEqual([['a', 'refused'], ['b', 'ask']]); // prettier-ignore
});

test('a file is read again once its commas are told', async () => {
  const { of, asked } = queue();
  of.add([text('a')]);
  of.take(await askedFor(asked, 1), ASK);
  of.answer(of.files[0]?.id ?? -1, 'decimal');
  await askedFor(asked, 2);
  expect(asked.map(({ commas }) => commas)).toEqual([null, 'decimal']);
});

test('one that is dropped while it is read lets the next one begin; its late answer is nobody’s', async () => {
  const { of, asked, cancel } = queue();
  of.add([text('a'), text('b')]);
  const late = await askedFor(asked, 1);
  of.drop(of.files[0]?.id ?? -1);
  expect(cancel).toHaveBeenCalledOnce();
  of.take(late, REFUSED);
  expect(states(of)).toEqual([['b', 'reading']]);
});

test('more than 20 MB is refused without being read, and so is a file that is gone', async () => {
  const { of, asked } = queue();
  const large = new File([new Uint8Array(20e6 + 1)], 'large');
  const gone = Object.assign(text('gone'), { arrayBuffer: () => Promise.reject(new Error('NotFoundError')) });
  of.add([large, gone, text('c')]);
  await askedFor(asked, 1);
  expect(of.files.map(({ state }) => ('message' in state ? state.message : state.kind))).toEqual([
    'expected at most 20 MB, got 20.0 MB',
    'the file could not be read from the disk: it may have been moved or changed',
    'reading',
  ]);
});
