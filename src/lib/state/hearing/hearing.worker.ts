import { hearingDesk } from './desk.ts';
import type { Ask } from './messages.ts';

const answer = hearingDesk(
  (reply) => self.postMessage(reply),
  () => new Promise((resolve) => setTimeout(resolve)),
);
self.onmessage = ({ data }: MessageEvent<Ask>): void => void answer(data);
