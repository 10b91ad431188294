import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type FontFiles, slicesOf } from '../paper/index.ts';

/** The font of the papers, and what a shop added to it (`npm run fonts`), from the packages they come in. */
export function paperFonts(): FontFiles {
  const own = dirname(createRequire(import.meta.url).resolve('@fontsource/arimo/unicode.json'));
  return {
    slices: [
      ...familyIn(own, 'arimo'),
      ...addedFamilies().flatMap(({ at, name }) => familyIn(at, name, true)),
    ],
  };
}

function familyIn(folder: string, name: string, oneWeight = false) {
  const letters = JSON.parse(readFileSync(join(folder, 'unicode.json'), 'utf8')) as Record<string, string>;
  const read = async (file: string) => new Uint8Array(await readFile(join(folder, 'files', file)));
  return slicesOf({ name, letters, oneWeight, read });
}

/** The same path from the source and from what is compiled of it. */
const added = fileURLToPath(new URL('../../packaging/fonts', import.meta.url));

function addedFamilies(): { at: string; name: string }[] {
  const languages = existsSync(added) ? readdirSync(added) : [];
  return languages
    .map((language) => ({ name: `noto-sans-${language}` }))
    .map(({ name }, k) => ({ name, at: join(added, languages[k], 'node_modules', '@fontsource', name) }))
    .filter(({ at }) => existsSync(join(at, 'unicode.json')));
}
