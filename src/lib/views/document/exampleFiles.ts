/** A scene to look at and to begin from: made up, in numbers as they occur. */
export interface ExampleFile {
  /** The project's title. */
  readonly title: string;
  /** What it shows. */
  readonly about: string;
  /** Its file in `examples/`. */
  readonly file: string;
}

/** In the order in which they are offered. */
export const exampleFiles: readonly ExampleFile[] = [
  {
    file: 'tiny-desk',
    title: 'Tiny desk',
    about: 'Two single-driver boxes beside a laptop on 80 cm of desk: steep stands with a stop.',
  },
  {
    file: 'corner-desk',
    title: 'Corner desk',
    about: 'The seat in the corner of a room, two walls at 45° behind the loudspeakers.',
  },
  {
    file: 'sit-stand',
    title: 'Sit-stand desk',
    about: 'A desk of two heights with its front cut out: one aim for sitting and for standing.',
  },
  {
    file: 'shelf',
    title: 'Shelf over the desk',
    about: 'Loudspeakers on a shelf over the screen, tilted down, each against a stop.',
  },
  {
    file: 'on-their-side',
    title: 'Cabinets on their side',
    about: 'Two-way cabinets laid on their side under a raised screen, tweeters towards the middle.',
  },
  {
    file: 'coaxial',
    title: 'Coaxial pair',
    about: 'Tweeter and woofer on one axis: no height at which they part; a side wall at the left.',
  },
  {
    file: 'three-way',
    title: 'Three-way with an offset tweeter',
    about: 'Large cabinets with three drivers beside the middle line, a table of 2 m and a ceiling.',
  },
  {
    file: 'floor-stands',
    title: 'Floor stands beside an ultra-wide screen',
    about: 'No room left on the desk: wedges on the plates of two floor stands, turned with the cabinets.',
  },
];

const loaders = import.meta.glob<unknown>('/examples/*.json', { import: 'default' });

/** Fetches the document of an example. */
export async function loadExample({ file }: ExampleFile): Promise<unknown> {
  const load = loaders[`/examples/${file}.json`];
  if (!load) throw new Error(`There is no example ${file}.`);
  return load();
}
