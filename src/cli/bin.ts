#!/usr/bin/env node
import { createInterface } from 'node:readline';
import { main } from './main.js';
import { progressOn } from './progress.js';

// A reader such as `head` may close the pipe before everything is written: that is no error.
for (const stream of [process.stdout, process.stderr])
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });

const input = { [Symbol.asyncIterator]: () => createInterface({ input: process.stdin })[Symbol.asyncIterator]() };
process.exitCode = await main(
  process.argv.slice(2),
  {
    cwd: process.cwd(),
    out: (line) => process.stdout.write(`${line}\n`),
    err: (line) => process.stderr.write(`${line}\n`),
    progress: progressOn(process.stderr),
    interactive: process.stdin.isTTY === true && process.stdout.isTTY === true,
  },
  input,
);
