import { baffleLength, topDepth } from './cabinet.ts';
import { pointerTo, type Fault } from './fault.ts';
import type { Driver, Speaker } from './project.ts';
import { asMm, asTyped, bare, needs, says } from './sentence.ts';

/** Rounding in `height / cos(rake)` must not refuse a rim that touches the edge exactly. mm. */
const RIM_SLACK = 1e-9;

function rimFaults(speaker: Speaker, driver: Driver, index: number): Fault[] {
  const radius = driver.diameter / 2;
  const highest = baffleLength(speaker) - radius;
  const widest = speaker.width / 2 - radius;
  const at = (key: string): string => pointerTo('speaker', 'drivers', index, key);
  if (highest < radius || widest < 0) {
    const room = Math.min(speaker.width, baffleLength(speaker));
    return [
      {
        pointer: at('diameter'),
        message: needs(says`a driver that fits the baffle, ${asMm(room)} at most`, bare(asMm(driver.diameter))),
      },
    ];
  }
  const faults: Fault[] = [];
  if (driver.height < radius - RIM_SLACK || driver.height > highest + RIM_SLACK) {
    faults.push({
      pointer: at('height'),
      message: needs(
        says`a length from ${bare(asMm(radius))} to ${asMm(highest)} so that the rim stays on the baffle`,
        bare(asTyped(driver.height)),
      ),
    });
  }
  if (Math.abs(driver.offset) > widest + RIM_SLACK) {
    faults.push({
      pointer: at('offset'),
      message: needs(
        says`a position from ${bare(asMm(-widest))} to ${asMm(widest)} so that the rim stays on the baffle`,
        bare(asTyped(driver.offset)),
      ),
    });
  }
  return faults;
}

/** A dome or cone lies within its rim. */
const radiatingFaults = ({ diameter, radiating }: Driver, index: number): Fault[] =>
  radiating === null || radiating <= diameter
    ? []
    : [
        {
          pointer: pointerTo('speaker', 'drivers', index, 'radiating'),
          message: needs(says`a length of ${asMm(diameter)} at most, as the rim's diameter`, bare(asMm(radiating))),
        },
      ];

/** What cannot be built: a baffle that leans past the back of the box, a driver over the baffle's edge, a cone wider than its rim. */
export function cabinetFaults(speaker: Speaker): Fault[] {
  const top = topDepth(speaker);
  if (top <= 0) {
    return [
      {
        pointer: pointerTo('speaker', 'baffleRake'),
        message: needs(
          'a baffle that leaves some depth at the top of the cabinet',
          says`${String(speaker.baffleRake)}°`,
          says`the top would be ${asMm(top)} deep`,
        ),
      },
    ];
  }
  return [
    ...speaker.drivers.flatMap((driver, index) => [
      ...rimFaults(speaker, driver, index),
      ...radiatingFaults(driver, index),
    ]),
    ...centreOfMassFaults(speaker),
  ];
}

function centreOfMassFaults({ centreOfMass, depth, height }: Speaker): Fault[] {
  if (centreOfMass === null) return [];
  const at = (key: 'depth' | 'height', most: number): Fault[] =>
    centreOfMass[key] <= most
      ? []
      : [
          {
            pointer: pointerTo('speaker', 'centreOfMass', key),
            message: needs(
              says`a length from ${bare(asTyped(0))} to ${asTyped(most)}, inside the cabinet`,
              bare(asTyped(centreOfMass[key])),
            ),
          },
        ];
  return [...at('depth', depth), ...at('height', height)];
}
