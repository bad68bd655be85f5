import { posix, win32 } from 'node:path';

const NAMES = [
  'chromium',
  'chromium-browser',
  'chromium-headless-shell',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];
const LINUX_FOLDERS = ['/usr/bin', '/usr/local/bin', '/snap/bin', '/opt/google/chrome', '/opt/microsoft/msedge'];
const MAC_APPS = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
const WINDOWS_APPS = [
  ['Google', 'Chrome', 'Application', 'chrome.exe'],
  ['Chromium', 'Application', 'chrome.exe'],
  ['Microsoft', 'Edge', 'Application', 'msedge.exe'],
];

/**
 * Where a Chrome, Chromium or Edge usually lies on this kind of system.
 * @param {NodeJS.Platform} platform
 * @param {NodeJS.ProcessEnv} env
 * @returns {string[]} paths, the likeliest first; most will not exist
 */
export function usualPlaces(platform, env) {
  if (platform === 'win32') {
    const folders = [env['PROGRAMFILES'], env['PROGRAMFILES(X86)'], env['LOCALAPPDATA']].filter(
      (one) => one !== undefined,
    );
    return folders.flatMap((folder) => WINDOWS_APPS.map((steps) => win32.join(folder, ...steps)));
  }
  if (platform === 'darwin') {
    const folders = ['/Applications', posix.join(env['HOME'] ?? '/', 'Applications')];
    return folders.flatMap((folder) =>
      MAC_APPS.map((app) => posix.join(folder, `${app}.app`, 'Contents', 'MacOS', app)),
    );
  }
  const folders = new Set([
    ...LINUX_FOLDERS,
    ...(env['PATH'] ?? '').split(posix.delimiter).filter((one) => one !== ''),
  ]);
  return [...folders].flatMap((folder) => NAMES.map((name) => posix.join(folder, name)));
}
