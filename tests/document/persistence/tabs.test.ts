import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { broadcastChannel, storageChannel } from '$lib/document/persistence/channel.ts';
import { newsWords } from '$lib/document/persistence/tabNews.ts';
import { heard, newsOf, newTabs } from '$lib/document/persistence/tabs.ts';
import { TabWatch } from '$lib/document/persistence/tabWatch.svelte.ts';
import { FakeStore } from './store.ts';
import { TabLine } from './tabLine.ts';

function threeTabs() {
  const line = new TabLine();
  const watch = (tab: string, project: string) => new TabWatch(line.join(), tab, project);
  return { one: watch('one', 'attic'), two: watch('two', 'attic'), three: watch('three', 'cellar') };
}

describe('tabs with the same project', () => {
  it('find each other, whichever came first', () => {
    const { one, two, three } = threeTabs();
    expect(one.news).toEqual({ kind: 'shared', tabs: 1 });
    expect(two.news).toEqual({ kind: 'shared', tabs: 1 });
    expect(three.news).toEqual({ kind: 'alone' });
  });

  it('hear of a change, and only of one to their project', () => {
    const { one, two, three } = threeTabs();
    three.saved();
    expect(one.news.kind).toBe('shared');
    one.saved();
    expect([one, two, three].map(({ news }) => news.kind)).toEqual(['shared', 'conflict', 'alone']);
    two.settle();
    expect(two.news).toEqual({ kind: 'shared', tabs: 1 });
  });

  it('notice who turns to another project, leaves or closes', () => {
    const { one, two, three } = threeTabs();
    three.turnTo('attic');
    expect(one.news).toEqual({ kind: 'shared', tabs: 2 });
    expect(three.news).toEqual({ kind: 'shared', tabs: 2 });
    two.turnTo('cellar');
    expect(one.news).toEqual({ kind: 'shared', tabs: 1 });
    expect(two.news).toEqual({ kind: 'alone' });
    three.close();
    expect(one.news).toEqual({ kind: 'alone' });
    one.saved();
    expect(three.news.kind).toBe('shared');
  });

  it('are asked again, so that one that crashed is forgotten', () => {
    const { one, two } = threeTabs();
    vi.spyOn(two, 'leave').mockImplementation(() => undefined);
    two.close();
    expect(one.news).toEqual({ kind: 'shared', tabs: 1 });
    one.ask();
    expect(one.news).toEqual({ kind: 'alone' });
  });

  it('do without a line', () => {
    const watch = new TabWatch(null, 'one', 'attic');
    watch.saved();
    expect(watch.news).toEqual({ kind: 'alone' });
    watch.overtake();
    expect(watch.news).toEqual({ kind: 'conflict' });
    watch.close();
  });

  it('have words for the news', () => {
    expect(newsWords({ kind: 'alone' })).toBeNull();
    expect(newsWords({ kind: 'shared', tabs: 1 })).toMatch(/^This project is open in another tab too\./);
    expect(newsWords({ kind: 'shared', tabs: 3 })).toMatch(/^This project is open in 3 other tabs too\./);
    expect(newsWords({ kind: 'conflict' })).toMatch(/^Another tab has changed this project\./);
  });
});

describe('a message', () => {
  const known = { ...newTabs('one', 'attic'), others: ['two'] };

  it.each([null, 'saved', {}, { kind: 'explode', project: 'attic', tab: 'two' }, { kind: 'saved', project: 'attic' }])(
    'that is none, as %j, changes nothing',
    (message) => {
      expect(heard(known, message)).toEqual({ known, reply: null });
    },
  );

  it('of this tab’s own is not heard', () => {
    expect(heard(known, { kind: 'saved', project: 'attic', tab: 'one' })).toEqual({ known, reply: null });
  });

  it('never makes a tab count twice, and a change stays known until it is settled', () => {
    const anyMessage = fc.record({
      kind: fc.constantFrom('open', 'here', 'saved', 'left'),
      project: fc.constantFrom('attic', 'cellar'),
      tab: fc.constantFrom('one', 'two', 'three'),
    });
    fc.assert(
      fc.property(fc.array(anyMessage), (messages) => {
        const end = messages.reduce((state, message) => heard(state, message).known, newTabs('one', 'attic'));
        expect(new Set(end.others).size).toBe(end.others.length);
        const saved = messages.some(
          ({ kind, project, tab }) => kind === 'saved' && project === 'attic' && tab !== 'one',
        );
        expect(newsOf(end).kind === 'conflict').toBe(saved);
      }),
    );
  });
});

describe('the lines that browsers have', () => {
  it('carry messages over a broadcast channel', async () => {
    const [one, two] = [broadcastChannel(), broadcastChannel()];
    if (!one || !two) throw new Error('this platform has broadcast channels');
    try {
      const message = await new Promise((resolve) => {
        two.listen(resolve);
        one.post({ kind: 'saved' });
      });
      expect(message).toEqual({ kind: 'saved' });
    } finally {
      one.close();
      two.close();
    }
  });

  it('are missing where the platform has none', () => {
    vi.stubGlobal('BroadcastChannel', undefined);
    expect(broadcastChannel()).toBeNull();
    vi.unstubAllGlobals();
  });

  it('carry messages over a store, leave nothing in it, and stop when closed', () => {
    const frame = new EventTarget();
    const store = new FakeStore();
    const heardHere: unknown[] = [];
    // As the other tab's window would tell: the browser sends the event to every window but the writer's.
    const listener = storageChannel(store, frame);
    listener.listen((message) => heardHere.push(message));
    const tell = (key: string | null, newValue: string | null): void => {
      frame.dispatchEvent(Object.assign(new Event('storage'), { key, newValue }));
    };
    const writes: string[] = [];
    const writer = new FakeStore();
    vi.spyOn(writer, 'setItem').mockImplementation((key, value) => {
      writes.push(value);
      tell(key, value);
    });
    const sender = storageChannel(writer, new EventTarget());
    sender.post({ kind: 'saved' });
    sender.post({ kind: 'saved' });
    expect(heardHere).toEqual([{ kind: 'saved' }, { kind: 'saved' }]);
    expect(new Set(writes).size).toBe(2);
    expect(writer.everything).toEqual({});
    tell('wedgewright/tabs', null);
    tell('something else', '{"message":1}');
    expect(heardHere).toHaveLength(2);
    tell('wedgewright/tabs', 'no json');
    expect(heardHere).toEqual([{ kind: 'saved' }, { kind: 'saved' }, undefined]);
    listener.close();
    sender.post({ kind: 'saved' });
    expect(heardHere).toHaveLength(3);
  });

  it('send nothing, and throw nothing, where the store takes nothing', () => {
    const store = new FakeStore();
    store.forbidden = true;
    expect(() => storageChannel(store, new EventTarget()).post({ kind: 'saved' })).not.toThrow();
  });
});
