import { asBuilt } from './asBuilt.ts';
import { asHeard } from './asHeard.ts';
import type { Section } from './block.ts';
import { cautions } from './cautions.ts';
import { checking } from './checking.ts';
import { cutting } from './cutting.ts';
import { drawings } from './drawings.ts';
import { heed } from './heed.ts';
import { howSure } from './howSure.ts';
import { glueUp } from './glueUp.ts';
import { gluing } from './gluing.ts';
import { machines } from './machines.ts';
import { materials } from './materials.ts';
import { notMeasured } from './notMeasured.ts';
import { onTheDesk } from './onTheDesk.ts';
import { overview } from './overview.ts';
import { reopening } from './reopening.ts';
import type { Subject } from './subject.ts';

/** Everything that someone needs at the bench who never saw the page: cautions first, drawings and the way back to the project last. */
export const buildSheet = (subject: Subject): readonly Section[] =>
  [
    overview,
    notMeasured,
    howSure,
    heed,
    cautions,
    materials,
    cutting,
    gluing,
    glueUp,
    machines,
    onTheDesk,
    checking,
    asBuilt,
    asHeard,
    drawings,
    reopening,
  ].flatMap((section) => section(subject));
