#!/usr/bin/env node
import { run } from './run.js';

process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  // The reader of a pipe (head, less) may leave before we have finished: that is no failure.
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});
process.exitCode = await run(process.argv.slice(2), process.env, process.stdout, process.stderr);
