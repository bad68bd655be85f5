import { radians } from '$lib/geometry/angle.ts';
import { vec3, type Vec3 } from '$lib/geometry/point.ts';
import { baffleLength, middleOfBox } from './cabinet.ts';
import type { Driver, Speaker } from './project.ts';

/**
 * A loudspeaker by the sizes that it has as it stands. The file holds them as of an upright cabinet; of one that lies on its side
 * the baffle's length is the width, the width the height, and its drivers' centres have turned with it.
 */
export type StoodSpeaker = Speaker & { readonly laid?: Laid };

/** What of a cabinet on its side no size of an upright one says. */
export interface Laid {
  /** 1 where its top lies inboard, −1 where it lies outboard. */
  readonly top: 1 | -1;
  /**
   * Its eight corners, from the middle of its front bottom edge: x towards the middle, y rearwards along the bottom, z square to
   * that; in the order of a pose's.
   */
  readonly corners: readonly Vec3[];
  /** Whether its sides are square to its front: then the width is the height that the file holds. */
  readonly square: boolean;
  /** How far inboard of that middle it balances, mm. */
  readonly balance: number;
}

/**
 * The loudspeaker as it stands; an upright one is itself, and so is one that has been laid already. On its side it has turned a
 * quarter about the axis square to its baffle: what was up is inboard, or outboard. A baffle that leant back then faces
 * straight ahead of an edge that is plumb, and the back runs askew behind it.
 *
 * Seen as the right one of a pair, or the left of one that mirrors it; `laidOtherWay` turns the drivers of an identical left one.
 */
export function asStood(speaker: StoodSpeaker): StoodSpeaker {
  if (speaker.lying === 'upright') return speaker;
  const top = speaker.lying === 'tweeter-inboard' ? 1 : -1;
  const { width, depth, height, centreOfMass } = speaker;
  const long = baffleLength(speaker);
  const rake = radians(speaker.baffleRake);
  const [sine, cosine] = [Math.sin(rake), Math.cos(rake)];
  /** A point of the upright side view, rearwards and up: inboard of the lying one's middle, and behind its baffle. */
  const turned = (back: number, up: number) => ({
    inboard: top * (back * sine + up * cosine - long / 2),
    behind: back * cosine - up * sine,
  });
  const balance = centreOfMass ?? middleOfBox(speaker);
  const centre = turned(balance.depth, balance.height);
  const front = [-long / 2, long / 2].map((inboard) => ({ inboard, behind: 0 }));
  const rear = [turned(depth, 0), turned(depth, height)].sort((a, b) => b.inboard - a.inboard);
  const corners = [0, width].flatMap((z) => [...front, ...rear].map(({ inboard, behind }) => vec3(inboard, behind, z)));
  return {
    ...speaker,
    lying: 'upright',
    width: long,
    height: width,
    depth: rear.reduce((sum, { behind }) => sum + behind, 0) / 2,
    baffleRake: 0,
    drivers: speaker.drivers.map((driver) => ({
      ...driver,
      height: width / 2 - top * driver.offset,
      offset: top * (driver.height - long / 2),
    })),
    centreOfMass: { depth: centre.behind, height: width / 2 },
    laid: { top, corners, square: rake === 0, balance: centre.inboard },
  };
}

/** The driver of an identical cabinet that lies the other way round: what was below its middle is above it. */
export const laidOtherWay = (driver: Driver, { height }: Pick<StoodSpeaker, 'height'>): Driver => ({
  ...driver,
  height: height - driver.height,
});
