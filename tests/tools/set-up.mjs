// Installs what package-lock.json names, unless that was done since it last changed. With `--browser` also Chromium, in which
// pages are tried, where that can be done without asking.
import { execFileSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));
const [major, minor] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`This needs Node.js 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(2);
}
const installed = `${root}node_modules/.package-lock.json`;
if (!existsSync(installed) || statSync(installed).mtimeMs < statSync(`${root}package-lock.json`).mtimeMs) {
  console.error('Installing packages (once) …');
  execFileSync('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
}

const browsers = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome', process.env.CHROME_PATH ?? ''];
if (process.argv.includes('--browser') && process.platform === 'linux' && !browsers.some((path) => existsSync(path))) {
  const isRoot = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (isRoot) {
    console.error('Installing Chromium (once) …');
    for (const args of [
      ['update', '-qq'],
      ['install', '-y', '-qq', '--no-install-recommends', 'chromium'],
    ])
      execFileSync('apt-get', args, { stdio: ['ignore', 'ignore', 'inherit'] });
  } else console.error('Pages are tried in Chromium: `apt-get install chromium`, or set CHROME_PATH to where one is.');
}
