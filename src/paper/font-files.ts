/** A font in slices, each a file for some letters: only what a print needs is read. */
export interface FontFiles {
  slices: readonly FontSlice[];
}
export interface FontSlice {
  /** The letters it may be asked for, as the CSS descriptor `unicode-range` writes them: `U+0370-0377,U+037A`. */
  letters: string;
  read(weight: 'plain' | 'bold'): Promise<Uint8Array>;
}

/** A family as its package has it: the letters of each slice, and a file for each slice and weight. */
interface FontFamily {
  name: string;
  /** The package's `unicode.json`: letters by slice; a slice `[3]` is in the file of its number. */
  letters: Record<string, string>;
  /** Where it has but one weight, bold is printed in that. */
  oneWeight?: boolean;
  read(file: string): Promise<Uint8Array>;
}

/** Latin is the last of a package's list and the first here: most is written in it. */
export function slicesOf({ name, letters, oneWeight = false, read }: FontFamily): FontSlice[] {
  return Object.entries(letters)
    .map(([slice, range]) => ({
      letters: range,
      read: (weight: 'plain' | 'bold') =>
        read(
          `${name}-${slice.replace(/[[\]]/g, '')}-${weight === 'bold' && !oneWeight ? 700 : 400}-normal.woff`,
        ),
    }))
    .reverse();
}

/** The first slice that has the letter; undefined where none has. */
export function sliceOf(files: FontFiles, letter: string): FontSlice | undefined {
  const code = letter.codePointAt(0)!;
  return files.slices.find((slice) =>
    rangesOf(slice.letters).some(([from, to]) => code >= from && code <= to),
  );
}

const readRanges = new Map<string, [number, number][]>();

function rangesOf(letters: string): [number, number][] {
  const known = readRanges.get(letters);
  if (known) return known;
  const ranges = letters.split(',').map((range): [number, number] => {
    const [from, to = from] = range.trim().replace(/^U\+/i, '').split('-');
    return [Number.parseInt(from, 16), Number.parseInt(to, 16)];
  });
  readRanges.set(letters, ranges);
  return ranges;
}
