import { ALL_CELLS } from './limits.ts';
import { needs, says } from './sentence.ts';
import { pointerTo, type Fault } from './fault.ts';
import { got } from './got.ts';
import { DESK, FLOOR } from './surface.ts';
import { sideNames, type Project, type StandSettings } from './project.ts';

type Named = { readonly name: string };

/** Names that occur twice in a list: nothing could then say which one is meant. */
function twice(list: readonly Named[], ...steps: readonly (string | number)[]): Fault[] {
  const seen = new Set<string>();
  return list.flatMap(({ name }, index) => {
    const again = seen.has(name);
    seen.add(name);
    return again
      ? [{ pointer: pointerTo(...steps, index, 'name'), message: needs('a name not used before', got(name)) }]
      : [];
  });
}

function unknownName(
  what: string,
  name: string,
  list: readonly Named[],
  ...steps: readonly (string | number)[]
): Fault[] {
  if (list.some((one) => one.name === name)) return [];
  const known = list.map((one) => got(one.name)).join(', ');
  return [{ pointer: pointerTo(...steps), message: needs(says`the name of a ${what} (${known})`, got(name)) }];
}

function pairFaults(
  pair: readonly [string, string],
  drivers: readonly Named[],
  ...steps: readonly (string | number)[]
): Fault[] {
  const missing = pair.flatMap((name, index) => unknownName('driver', name, drivers, ...steps, index));
  const same = pair[0] === pair[1];
  return same
    ? [
        ...missing,
        { pointer: pointerTo(...steps, 1), message: needs('two different drivers', says`${got(pair[1])} twice`) },
      ]
    : missing;
}

/** Postures that an aim is for: each there, and named once. */
function overFaults(
  names: readonly string[],
  postures: readonly Named[],
  ...steps: readonly (string | number)[]
): Fault[] {
  return names.flatMap((name, index) =>
    names.indexOf(name) < index
      ? [{ pointer: pointerTo(...steps, index), message: needs('each posture once', says`${got(name)} again`) }]
      : unknownName('posture', name, postures, ...steps, index),
  );
}

/** The stocks that a stand asks for, and where. */
const stocksNamed = ({ stock, cheeks, ribs }: StandSettings) =>
  [
    { name: stock, steps: ['stock'] },
    { name: cheeks?.stock ?? null, steps: ['cheeks', 'stock'] },
    { name: ribs?.skin ?? null, steps: ['ribs', 'skin'] },
  ].flatMap(({ name, steps }) => (name === null ? [] : [{ name, steps }]));

/** Names that are used twice, and references to a name that nothing has. */
export function referenceFaults(project: Project): Fault[] {
  const { drivers, crossovers, designPoint } = project.speaker;
  return [
    ...twice(drivers, 'speaker', 'drivers'),
    ...twice(project.stock, 'stock'),
    ...twice(project.layouts, 'layouts'),
    ...crossovers.flatMap(({ between }, index) =>
      pairFaults(between, drivers, 'speaker', 'crossovers', index, 'between'),
    ),
    ...(designPoint.rule === 'measured'
      ? unknownName('driver', designPoint.driver, drivers, 'speaker', 'designPoint', 'driver')
      : []),
    ...project.layouts.flatMap((layout, index) => {
      const { through, over } = layout.aim;
      const at = ['layouts', index] as const;
      return [
        ...twice(layout.listener.postures, ...at, 'listener', 'postures'),
        ...twice(layout.room.walls, ...at, 'room', 'walls'),
        ...twice(layout.surfaces, ...at, 'surfaces'),
        ...sideNames.flatMap((side) =>
          unknownName(
            'surface',
            layout.placement[side].on,
            [{ name: DESK }, { name: FLOOR }, ...layout.surfaces],
            ...at,
            'placement',
            side,
            'on',
          ),
        ),
        ...(typeof through === 'string'
          ? unknownName('driver', through, drivers, ...at, 'aim', 'through')
          : pairFaults(through.between, drivers, ...at, 'aim', 'through', 'between')),
        ...sideNames.flatMap((side) =>
          (layout.built?.sides[side].readings ?? []).flatMap((reading, place) =>
            reading.what === 'driver-height'
              ? unknownName(
                  'driver',
                  reading.driver,
                  drivers,
                  ...at,
                  'built',
                  'sides',
                  side,
                  'readings',
                  place,
                  'driver',
                )
              : [],
          ),
        ),
        ...(layout.built?.heard ?? []).flatMap(({ curve: { from, levels } }, place) =>
          from + levels.length <= ALL_CELLS
            ? []
            : [
                {
                  pointer: pointerTo(...at, 'built', 'heard', place, 'curve', 'levels'),
                  message: `expected at most ${ALL_CELLS - from} levels from cell ${from} up, got ${levels.length}`,
                },
              ],
        ),
        ...(over === null || over.postures === 'all'
          ? []
          : overFaults(over.postures, layout.listener.postures, ...at, 'aim', 'over', 'postures')),
        ...stocksNamed(layout.stand).flatMap(({ name, steps }) =>
          unknownName('stock', name, project.stock, ...at, 'stand', ...steps),
        ),
      ];
    }),
  ];
}
