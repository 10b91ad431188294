export type TroubleKind = 'damaged' | 'newer' | 'full' | 'read-only' | 'cannot open' | 'busy' | 'disk';

/** The database cannot do what was asked, for a reason the builder can do something about. */
export class DatabaseTrouble extends Error {
  readonly kind: TroubleKind;
  constructor(kind: TroubleKind, place: string, detail = '', options?: ErrorOptions) {
    super(`${words[kind].replace('FILE', place)}${detail ? ` (${detail})` : ''}`, options);
    this.kind = kind;
  }
}

const words: Record<TroubleKind, string> = {
  damaged:
    'The database FILE is damaged; nothing in it was changed. Keep a copy of it, then put a backup in its place or start with another data folder (--data FOLDER)',
  newer:
    'The database FILE was written by a newer Fairbend; nothing in it was changed. Update this Fairbend, or start with another data folder (--data FOLDER)',
  full: 'The disk under the database FILE is full; the last change was not saved. Make room on it, then try again',
  'read-only':
    'The database FILE may not be written. Give yourself the right to write to it and its folder, or start with another data folder (--data FOLDER)',
  'cannot open':
    'The database FILE cannot be opened. Check that its folder exists and may be written, or start with another data folder (--data FOLDER)',
  busy: 'Another program holds the database FILE locked. Close that program, then try again',
  disk: 'Reading or writing the database FILE failed. Check the disk and its connection; a data folder belongs on a disk of this computer',
};

/** SQLite's primary result codes, by number (node:sqlite) and name (better-sqlite3). */
const sqliteCodes: [number, string, TroubleKind][] = [
  [5, 'SQLITE_BUSY', 'busy'],
  [6, 'SQLITE_LOCKED', 'busy'],
  [8, 'SQLITE_READONLY', 'read-only'],
  [10, 'SQLITE_IOERR', 'disk'],
  [11, 'SQLITE_CORRUPT', 'damaged'],
  [13, 'SQLITE_FULL', 'full'],
  [14, 'SQLITE_CANTOPEN', 'cannot open'],
  [26, 'SQLITE_NOTADB', 'damaged'],
];

/** The trouble behind a driver's error; undefined where it is something else. */
export function troubleOf(error: unknown, place: string): DatabaseTrouble | undefined {
  if (error instanceof DatabaseTrouble) return error;
  const { code, errcode } = error as { code?: unknown; errcode?: unknown };
  const known = sqliteCodes.find(
    ([number, name]) =>
      (typeof errcode === 'number' && (errcode & 255) === number) ||
      (typeof code === 'string' && code.startsWith(name)),
  );
  if (known) return new DatabaseTrouble(known[2], place, '', { cause: error });
  if (code === 'ECONNREFUSED' || code === 'ENOTFOUND') {
    return new DatabaseTrouble('cannot open', place.replace(/\/\/.*@/, '//'), String(code), { cause: error });
  }
  return undefined;
}
