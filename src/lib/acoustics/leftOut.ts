/**
 * Hz: from here up a desk's edges, each bending the sound once, give the sound over it within 1.2 dB of boundary elements,
 * computed for four places of source and head over a rigid plate of 1400 × 700 mm; an octave under it they are off by 2.
 */
export const DESK_KNOWN_FROM = 250;

/** What the predicted response leaves out, one sentence each, to stand beside it. */
export const leftOut: readonly string[] = [
  'The room’s resonances: below some 250 Hz the room, not these paths, decides what is heard. Each surface sends back one reflection; those of two bounces and the floor are left out.',
  `What the desk does under about ${DESK_KNOWN_FROM} Hz: it is not known. From there up it counts as a thin rigid plate with its four edges, each of which bends the sound once, within about 1 dB of a full computation. Sound that bends twice, its thickness, a rounded front and what lies on it are left out.`,
  'The bodies of screens: to the direct sound and to its own reflection a screen is a thin rigid plate, its face, with four edges as the desk’s. A curved one is flat strips that turn by 15° at most, side by side, each with edges of its own; to every other way it is the box round it. To every other way screens and cabinets near it are black rectangles that the sound bends round (Fresnel’s integrals at all four edges); what they send back to the side is left out.',
  'Sound that bends round the loudspeaker’s own baffle: behind it the cabinet takes off one gentle slope above the frequency whose wave goes round it; a rule of thumb.',
  'The drivers themselves: each counts as a flat piston in an endless baffle, as wide as its radiating diameter (an estimate where none is stated), flat in level on its axis. Domes and cones beam less than that, and break up. Behind the baffle the piston’s nulls are filled, by a rule of thumb.',
  'The real crossover: each driver gets the textbook filter of its alignment. At the design point, known or assumed, the drivers are lined up and even; where it is not known they count as arriving in step at the head, for want of knowing better.',
  'Head and body: the response is that of a small microphone in the middle of the head.',
  'The materials’ own ways: a surface keeps the same share at all frequencies and angles. Walls and ceiling reflect like mirrors without end.',
];
