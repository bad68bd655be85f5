import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';

/** A browser without a window, and letters for it to draw with. */
const PACKAGES = ['chromium-headless-shell', 'fonts-dejavu-core'];

/** Where the package puts it. */
export const DEBIAN_BROWSER = '/usr/bin/chromium-headless-shell';

/** @returns {boolean} whether this is Debian itself (its relatives pack the browser differently) */
function isDebian() {
  try {
    return /^ID="?debian"?$/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

/** @returns {string | null} why `installBrowserDebian` cannot work here; null when it can */
export function whyNotDebian() {
  if (!isDebian()) return 'this is not Debian';
  return process.getuid?.() === 0 ? null : 'not root';
}

/**
 * Installs a browser for the tests from Debian's own packages. **This changes the system**: it refreshes the package
 * lists and installs two packages with what they need. It is the last thing the search for a browser tries, works on
 * Debian as root only, and prints each command before it runs.
 * @returns {boolean} whether the packages are in
 */
export function installBrowserDebian() {
  const steps = [['update'], ['install', '-y', '--no-install-recommends', ...PACKAGES]];
  return steps.every((args) => {
    console.log(`Changing this system: apt-get ${args.join(' ')}`);
    const { status, stdout, stderr } = spawnSync('apt-get', args, {
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      maxBuffer: 64 * 1024 * 1024,
    });
    if (status !== 0) console.error(`${stdout ?? ''}${stderr ?? ''}`);
    return status === 0;
  });
}
