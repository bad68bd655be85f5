/**
 * How the tests start Chromium. Its sandbox cannot work for root or in most containers, and the only site opened is the
 * project's own, served on this machine. The others keep the browser from calling home, which would show up in a test
 * that counts requests and fails slowly where there is no network; every name but this machine's own is unknown. WebGL is
 * worked out in software, as there is no graphics processor.
 */
export const browserFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];
