/** Runs the program; an error ends it with its message alone, for the trace helps nobody at the bench. */
export async function orExplain(program) {
  try {
    await program();
  } catch (error) {
    console.error(process.env.DEBUG ? error : `\n${error.message}`);
    process.exitCode = 1;
  }
}
