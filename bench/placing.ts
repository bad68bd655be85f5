import { detailed, sheetOf, textsPlaced } from '$lib/drawing/sheet.ts';
import { screenStyle } from '$lib/drawing/dimensionStyle.ts';
import { demoProject } from '$lib/project/demo.ts';
import { checkProject } from '$lib/project/parse.ts';
import { plan } from '$lib/solution/plan.ts';
import { medianTime, type Measured } from './measure.ts';

/** As large as the drawing in a window of 1440 × 900, px. */
const FRAME = { left: 0, top: 0, width: 986, height: 594 };
/** What of a frame, of 16.7 ms at 60 Hz, the texts may take. */
const LIMIT = 4;

/** Finding the texts of the demo's four views their places: what a drag does once a frame. */
export function benchPlacing(): Measured {
  const parsed = checkProject(demoProject);
  if (!parsed.ok) throw new Error('The demo is sound.');
  const project = parsed.value;
  const [layout] = project.layouts;
  if (!layout) throw new Error('The demo has a layout.');
  const outcome = plan(project, layout);
  if (!outcome.ok) throw new Error('The demo has a plan.');
  const style = screenStyle(FRAME.width);
  const source = { project, layout, layoutIndex: 0, plan: outcome.value, side: 'right' } as const;
  const panes = detailed(sheetOf(source, 'all', FRAME, style), 1, style);
  const place = () => textsPlaced(panes, { k: 1, x: 0, y: 0 }, style, project.display);
  const median = medianTime(place, 40, 5);
  const items = place().flatMap(({ view }) => view.items);
  return { name: 'placing the texts of four views', median, limit: LIMIT, checksum: String(items.length) };
}
