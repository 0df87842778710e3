/** The command line itself: the process's arguments and streams joined to main. */
import { main } from './main.ts';

// A reader that closes early, such as head, has what it wanted.
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code !== 'EPIPE') throw fault;
});

process.exitCode = await main(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
});
