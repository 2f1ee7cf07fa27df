// Installs what package-lock.json names, unless that was done since it last changed.
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
