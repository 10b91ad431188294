import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { say } from './root.mjs';

/** Debian's headless shell first: the same engine without the window round it, at half the work a page. */
const names = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'msedge',
];

/** A Chromium for the browser tests, installed by apt-get where that is possible; undefined where there is none. */
export function findOrInstallChromium() {
  return findChromium() ?? (installChromium() ? findChromium() : undefined);
}

function findChromium() {
  const { CHROME, PATH = '', PROGRAMFILES, 'PROGRAMFILES(X86)': programs86, LOCALAPPDATA } = process.env;
  if (CHROME) return existsSync(CHROME) ? CHROME : undefined;
  const onPath = PATH.split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  const onMac = [
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ];
  const onWindows = [PROGRAMFILES, programs86, LOCALAPPDATA]
    .filter(Boolean)
    .flatMap((folder) => [
      join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
      join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
    ]);
  return [...onPath, ...onMac, ...onWindows].find((file) => existsSync(file));
}

/** Debian and its kin, as root: a test machine. Nobody's own computer is changed. */
function installChromium() {
  const root = process.getuid?.() === 0;
  if (process.env.CHROME || !root || !existsSync('/usr/bin/apt-get')) return false;
  say('No Chromium for the browser tests: installing Debian’s …');
  const apt = (...parameters) =>
    spawnSync('apt-get', parameters, {
      stdio: ['ignore', process.stderr, process.stderr],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    }).status === 0;
  const install = (name) => apt('install', '-y', '-q', '--no-install-recommends', name);
  return apt('update', '-q') && (install('chromium-headless-shell') || install('chromium'));
}
