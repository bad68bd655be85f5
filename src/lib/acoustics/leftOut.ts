/** What the predicted response leaves out, one sentence each, to stand beside it. */
export const leftOut: readonly string[] = [
  'The room’s resonances: below some 250 Hz the room, not these paths, decides what is heard. Each surface sends back one reflection; those of two bounces and the floor are left out.',
  'Edges of the desk, the walls and the screens: a reflection counts in full where its point lies on the surface and not at all where it misses. A real desk sends back less, the less the lower the frequency.',
  'Sound that bends round the baffle and round what is in the way. A body in the way, and the cabinet behind its own baffle, take off one gentle slope above the frequency whose wave goes round them; a rule of thumb.',
  'The drivers themselves: each counts as a flat piston in an endless baffle, as wide as its radiating diameter (an estimate where none is stated), flat in level on its axis. Domes and cones beam less than that, and break up.',
  'The real crossover: each driver gets the textbook filter of its alignment. With a design point the drivers are lined up and even there; without one they count as arriving in step at the head, for want of knowing better.',
  'Head and body: the response is that of a small microphone in the middle of the head.',
  'The materials’ own ways: a surface keeps the same share at all frequencies and angles, and reflects like a mirror.',
  'Fine grain: 48 frequencies an octave. Reflections that come much later than the direct sound ripple faster than that towards the top.',
];
