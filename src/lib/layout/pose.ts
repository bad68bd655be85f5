import type { Vec3 } from '$lib/geometry/point.ts';
import type { Driver, SideName } from '$lib/project/project.ts';

/** A driver where it stands once the cabinet is aimed. Desk frame, mm and radians. */
export interface PlacedDriver {
  readonly driver: Driver;
  /** Its centre on the face of the baffle. */
  readonly position: Vec3;
  /** Where its sound comes from: `position` less the acoustic depth along the axis. */
  readonly acousticCentre: Vec3;
  /** Acoustic centre to head, mm. */
  readonly distance: number;
  /** Angle at `position` between the axis and the head, 0…π. */
  readonly offAxis: number;
}

/** One cabinet, aimed: everything later rooms need to know about where it stands. Desk frame, mm and radians. */
export interface Pose {
  readonly side: SideName;
  /** On what the stand is on: z is 0 on the desk. */
  readonly mark: Vec3;
  /** Positive turns the front towards the middle. */
  readonly toe: number;
  /** Positive raises the axis. */
  readonly tilt: number;
  /** Tilt + baffle rake. */
  readonly elevation: number;
  /** Height of the cabinet's lowest bottom edge over what its stand is on; so the next two. */
  readonly lift: number;
  readonly frontEdgeHeight: number;
  readonly rearEdgeHeight: number;
  /** Unit vectors: along the axis, towards the middle (level), and up along the baffle. */
  readonly forward: Vec3;
  readonly inboard: Vec3;
  readonly up: Vec3;
  /** Unit vectors of the cabinet's bottom plane: level and away from the listener in plan; rearwards down the slope; square to the bottom, upwards. */
  readonly rearLevel: Vec3;
  readonly rearSlope: Vec3;
  readonly bottomNormal: Vec3;
  readonly aimedPoint: Vec3;
  /** Shortest distance from the axis to the head. */
  readonly miss: number;
  readonly drivers: readonly PlacedDriver[];
  /**
   * The cabinet's eight corners: bottom front outboard, bottom front inboard, bottom rear inboard, bottom rear outboard,
   * then the four over them in the same order.
   */
  readonly cabinet: readonly Vec3[];
}
