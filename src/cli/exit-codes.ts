/** What the command line says to the program that called it; shown in `help`. */
export const exitCodes = {
  fine: 0,
  /** The build has findings, or they stop the work. */
  findings: 1,
  /** The file cannot be read or is no build, an option makes no sense, input is no JSON lines. */
  input: 2,
} as const;

/** A way out with a message for standard error. */
export class CommandError extends Error {
  constructor(
    message: string,
    readonly code: number,
  ) {
    super(message);
  }
}
