import { pointerTo } from '$lib/project/fault.ts';
import type { Layout, SideName } from '$lib/project/project.ts';

/** Where in the project the values of a drawing come from, as JSON pointers; nothing for what a rule solves. */
export function inputsOf(layout: Layout, index: number) {
  const at = (...steps: (string | number)[]): string => pointerTo('layouts', index, ...steps);
  const { toe, tilt } = layout.aim;
  return {
    at,
    desk: (...steps: string[]) => at('desk', ...steps),
    wall: (index: number) => at('room', 'walls', index, 'distance'),
    listener: (key: 'offset' | 'setback' | 'earHeight') => at('listener', key),
    mark: (side: SideName, key: 'x' | 'y') => at('placement', side, key),
    toe: toe.rule === 'as-set' ? { input: at('aim', 'toe', 'degrees') } : {},
    tilt: tilt.rule === 'tilt-to-ear' ? {} : { input: at('aim', 'tilt', 'degrees') },
    lift: tilt.rule === 'lift-to-ear' ? {} : { input: at('stand', 'lift') },
  };
}
