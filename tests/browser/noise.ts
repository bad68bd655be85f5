import type { BrowserContext, Page, Request } from 'playwright';

/**
 * Writes down everything in the context that a sound page never does: a console message of any kind, an uncaught error,
 * a request that failed or was answered with an error, a request to another host. Requests that the page cuts short by leaving
 * are none of it: what is under way then depends on how fast the machine is.
 * @returns the list, which goes on growing
 */
export function listen(context: BrowserContext, site: string): string[] {
  const heard: string[] = [];
  const home = new URL(site).origin;
  const underWay = new Set<Request>();
  const left = new WeakSet<Request>();
  context.on('console', (message) => {
    if (!OF_THE_BROWSER.test(message.text())) heard.push(`console ${message.type()}: ${message.text()}`);
  });
  context.on('weberror', (event) => heard.push(`uncaught: ${event.error().stack ?? event.error().message}`));
  context.on('request', (request) => {
    if (request.isNavigationRequest()) {
      const page = pageOf(request);
      for (const other of underWay) if (page !== null && pageOf(other) === page) left.add(other);
    }
    underWay.add(request);
    // data: and blob: have no host; they are the page's own.
    const { protocol, origin } = new URL(request.url());
    if (protocol.startsWith('http') && origin !== home) heard.push(`request to another host: ${request.url()}`);
  });
  context.on('requestfinished', (request) => void underWay.delete(request));
  context.on('requestfailed', (request) => {
    underWay.delete(request);
    // Called off by the page itself: a worker that a newer question has ended, or that was starting when its page was left.
    if (left.has(request) || request.failure()?.errorText === 'net::ERR_ABORTED') return;
    heard.push(`failed request: ${request.url()} (${request.failure()?.errorText ?? 'no reason given'})`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400) heard.push(`answer ${response.status()}: ${response.url()}`);
  });
  return heard;
}

/** What Chromium says of the speed of graphics that it works out without a graphics processor: nothing that a page does. */
const OF_THE_BROWSER = /^\[\.WebGL-\w+\]\s*GL Driver Message \(OpenGL, Performance,/;

/** The page that asks; null where a service worker does, or a page that is only about to be there. */
function pageOf(request: Request): Page | null {
  if (request.serviceWorker()) return null;
  try {
    return request.frame().page();
  } catch {
    return null;
  }
}
