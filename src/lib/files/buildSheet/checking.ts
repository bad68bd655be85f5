import { partView } from '$lib/drawing/partView.ts';
import { planGauges } from '$lib/plan/gauges.ts';
import { drawing, text, type Section } from './block.ts';
import type { Subject } from './subject.ts';

/** The gauges, and how they are used. */
export function checking({ plan }: Subject): Section {
  const gauges = planGauges(plan);
  return {
    id: 'checking',
    title: 'Checking the angles',
    blocks: [
      text(
        gauges.length > 0
          ? 'Cut the gauges from any flat board or card, along their lines. Stand the wedge gauge on the desk beside the stand: its top must follow the slope. Stand the baffle gauge before the cabinet: its leaning edge must lie on the baffle without light between.'
          : 'The angles are too steep for a gauge: check them with a digital one.',
      ),
      ...gauges.map((gauge) => drawing({ ...partView(gauge), name: `Gauge ${gauge.name}` })),
    ],
  };
}
