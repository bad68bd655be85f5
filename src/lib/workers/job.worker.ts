import { handler } from './handler.ts';
import type { Request } from './messages.ts';

const answer = handler({
  post: (reply) => self.postMessage(reply),
  pause: () => new Promise((resolve) => setTimeout(resolve)),
  now: () => performance.now(),
});
self.onmessage = ({ data }: MessageEvent<Request>): void => void answer(data);
