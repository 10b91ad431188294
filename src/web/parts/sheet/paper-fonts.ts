/// <reference types="vite/types/importMeta.d.ts" />
import plainLetters from '@fontsource/arimo/unicode.json';
import { type FontFiles, slicesOf } from '../../../paper/index.ts';

/** Addresses of the fonts' files; each is fetched only when a print needs it. Beside ours, what a shop added. */
const addresses = import.meta.glob<string>(
  [
    '../../../../node_modules/@fontsource/arimo/files/*-{400,700}-normal.woff',
    '../../../../packaging/fonts/*/node_modules/@fontsource/*/files/*-400-normal.woff',
  ],
  { query: '?url', import: 'default', eager: true, exhaustive: true },
);
const addedLetters = import.meta.glob<Record<string, string>>(
  '../../../../packaging/fonts/*/node_modules/@fontsource/*/unicode.json',
  { import: 'default', eager: true, exhaustive: true },
);
const byName = new Map(
  Object.entries(addresses).map(([path, address]) => [path.replace(/^.*\//, ''), address]),
);

async function read(file: string): Promise<Uint8Array> {
  const answer = await fetch(byName.get(file)!);
  if (!answer.ok) throw new Error('the font did not come from the server; try again');
  return new Uint8Array(await answer.arrayBuffer());
}

export const paperFonts: FontFiles = {
  slices: [
    ...slicesOf({ name: 'arimo', letters: plainLetters, read }),
    ...Object.entries(addedLetters).flatMap(([path, letters]) =>
      slicesOf({ name: /@fontsource\/([^/]+)/.exec(path)![1], letters, oneWeight: true, read }),
    ),
  ],
};
