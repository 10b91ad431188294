import { writeFileSync } from 'node:fs';
import { fromWhereCalled } from '../door/open-image.ts';
import { CommandError, exitCodes } from './exit-codes.ts';

/** Writes what a command was asked for. Throws a CommandError that says why it could not. */
export function writeOut(out: string, content: string | Uint8Array): void {
  try {
    writeFileSync(fromWhereCalled(out), content);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    throw new CommandError(`${out} cannot be written: ${reason}. Give another --out.`, exitCodes.input);
  }
}
