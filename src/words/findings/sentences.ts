import type { Writer } from '../writer.ts';

/** A sentence for each kind of finding that one folder of the engine knows. */
export type Sentences<Kinds> = { [C in keyof Kinds]: (values: Kinds[C], writer: Writer) => string };
