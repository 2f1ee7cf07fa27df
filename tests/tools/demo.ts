import { fileURLToPath } from 'node:url';
import { main } from '../../src/cli/main.js';

/** The main job on the first sample clinic: check, build, and three questions. Run by `npm run demo`. */
const commands = [
  ['check', 'seeds/harrow-mills'],
  ['build', 'seeds/harrow-mills', '--out', 'out/harrow-mills'],
  ['decide', 'washer-compatibility', '--clinic', 'seeds/harrow-mills', 'instrument.materials=stainless-steel,anodised-aluminium'],
  [
    'decide',
    'washer-program',
    '--clinic',
    'seeds/harrow-mills',
    'load.purpose=wash',
    'load.arrangement=cassettes',
    'load.soil=light-soil',
  ],
  ['decide', 'waiting', '--clinic', 'seeds/harrow-mills', 'load.wait=25min', 'load.kept-moist=false'],
];

const cwd = fileURLToPath(new URL('../../', import.meta.url));
const nothing = { async *[Symbol.asyncIterator]() {} };
for (const args of commands) {
  console.log(`\n$ rulebook ${args.join(' ')}`);
  const code = await main(
    args,
    { cwd, out: console.log, err: console.error, progress: { step() {}, done() {} }, interactive: false },
    nothing,
  );
  if (code !== 0) process.exit(code);
}
console.log('\nOpen out/harrow-mills/manual.html in a browser and print it, or read out/harrow-mills/manual.md.');
