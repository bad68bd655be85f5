import { nestingDesk } from './desk.ts';

const answer = nestingDesk({
  post: (reply) => self.postMessage(reply),
  pause: () => new Promise((resolve) => setTimeout(resolve)),
  now: () => performance.now(),
});
self.onmessage = ({ data }: MessageEvent<unknown>): void => void answer(data);
