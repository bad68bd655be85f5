import type { BrowserContext } from 'playwright';

/**
 * Writes down everything in the context that a sound page never does: a console message of any kind, an uncaught error,
 * a request that failed or was answered with an error, a request to another host.
 * @returns the list, which goes on growing
 */
export function listen(context: BrowserContext, site: string): string[] {
  const heard: string[] = [];
  const home = new URL(site).origin;
  context.on('console', (message) => heard.push(`console ${message.type()}: ${message.text()}`));
  context.on('weberror', (event) => heard.push(`uncaught: ${event.error().stack ?? event.error().message}`));
  context.on('request', (request) => {
    // data: and blob: have no host; they are the page's own.
    const { protocol, origin } = new URL(request.url());
    if (protocol.startsWith('http') && origin !== home) heard.push(`request to another host: ${request.url()}`);
  });
  context.on('requestfailed', (request) => {
    heard.push(`failed request: ${request.url()} (${request.failure()?.errorText ?? 'no reason given'})`);
  });
  context.on('response', (response) => {
    if (response.status() >= 400) heard.push(`answer ${response.status()}: ${response.url()}`);
  });
  return heard;
}
