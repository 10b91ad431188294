import { CommanderError } from 'commander';
import { makeProgram } from './commands.ts';
import { CommandError, exitCodes } from './exit-codes.ts';

/** A reader that closes early (`| head`) is no error. */
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(exitCodes.fine);
  throw error;
});

const program = makeProgram((code) => {
  process.exitCode = code;
}).exitOverride();
for (const command of program.commands) command.exitOverride();

try {
  await program.parseAsync(process.argv);
} catch (error) {
  if (error instanceof CommandError) {
    process.stderr.write(`${error.message}\n`);
    process.exitCode = error.code;
  } else if (error instanceof CommanderError) {
    // Commander has said what was wrong, or shown the help that was asked for.
    process.exitCode = error.exitCode === 0 ? exitCodes.fine : exitCodes.input;
  } else throw error;
}
