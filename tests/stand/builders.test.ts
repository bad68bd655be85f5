import { expect, test, vi } from 'vitest';

test('a build that has not been supplied is a mistake, never another stand', async () => {
  vi.resetModules();
  const { builderOf } = await import('$lib/stand/builders.ts');
  expect(builderOf('stacked')).toBeTypeOf('function');
  expect(() => builderOf('skinned')).toThrow(/skinned/);
  await import('$lib/stand/allBuilds.ts');
  expect(builderOf('skinned')).not.toBe(builderOf('solid'));
});
