import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The package's folder. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** A path inside it. */
export const inRoot = (...parts) => join(root, ...parts);

/** Progress for the person at the terminal; standard output stays free for results. */
export const say = (message) => console.error(message);
