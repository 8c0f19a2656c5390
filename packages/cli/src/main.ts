import { exitCodes } from './exit-codes.ts';
import { nodeShell } from './node-shell.ts';
import { run } from './run.ts';

for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    // a reader that has seen enough, such as `head`, closes the pipe: that ends the work and is no fault
    if (error.code === 'EPIPE') process.exit(process.exitCode ?? exitCodes.done);
    if (stream === process.stdout) {
      process.stderr.write(`The output could not be written (${error.message}). Is the disk full?\n`);
    }
    process.exit(exitCodes.refused);
  });
}

// The code is set rather than the process ended, so that a slow pipe still gets all of the output.
process.exitCode = await run(process.argv.slice(2), nodeShell(process));
