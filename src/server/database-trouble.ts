export type TroubleKind =
  | 'damaged'
  | 'newer'
  | 'full'
  | 'read-only'
  | 'cannot open'
  | 'busy'
  | 'disk'
  | 'not let in'
  | 'missing'
  | 'gone';

/** The database cannot do what was asked, for a reason the builder can do something about. */
export class DatabaseTrouble extends Error {
  readonly kind: TroubleKind;
  /** @param place a SQLite file or a postgres:// address, whose password is not repeated */
  constructor(kind: TroubleKind, place: string, detail = '', options?: ErrorOptions & { server?: boolean }) {
    const server = options?.server ?? isServer(place);
    const said = (server ? serverWords : fileWords)[kind].replace('FILE', withoutPassword(place));
    super(`${said}${detail ? ` (${detail})` : ''}`, options);
    this.kind = kind;
  }

  /** One whose words another thread has found. */
  static said(kind: TroubleKind, message: string): DatabaseTrouble {
    const trouble = new DatabaseTrouble(kind, '');
    trouble.message = message;
    return trouble;
  }
}

const fileWords: Record<TroubleKind, string> = {
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
  'not let in': 'The database FILE does not let this account in. Check who owns it',
  missing: 'There is no database FILE. Check its name',
  gone: 'The database FILE was moved, deleted or replaced while Fairbend runs; this change was not saved. Put the file back, then end Fairbend and start it again',
};

const serverWords: Record<TroubleKind, string> = {
  damaged:
    'PostgreSQL says that the database FILE is damaged; this change was not saved. Keep a copy of its files, then restore its last dump',
  newer: 'The database FILE was written by a newer Fairbend; nothing in it was changed. Update this Fairbend',
  full: 'The disk under the database FILE is full; the last change was not saved. Make room on it, then try again',
  'read-only':
    'The database FILE may not be written. Give its account the right to create tables and write, or name the main server in DATABASE_URL instead of a standby',
  'cannot open':
    'The database FILE does not answer; this change was not saved. Check that PostgreSQL runs there and that DATABASE_URL names it, then try again',
  busy: 'The database FILE is held by others: a move of the record is under way, or there are too many connections. Wait, then try again',
  disk: 'PostgreSQL could not read or write the database FILE. Check the disk of its server',
  'not let in': 'The database FILE does not let this account in. Check name and password in DATABASE_URL',
  missing: 'PostgreSQL has no database FILE. Make it (createdb), or correct DATABASE_URL',
  gone: 'PostgreSQL has no database FILE any more; this change was not saved. Restore its last dump',
};

/** SQLite's primary result codes. */
const sqliteCodes: [number, TroubleKind][] = [
  [5, 'busy'],
  [6, 'busy'],
  [8, 'read-only'],
  [10, 'disk'],
  [11, 'damaged'],
  [13, 'full'],
  [14, 'cannot open'],
  [26, 'damaged'],
];

/** PostgreSQL's SQLSTATE codes (its manual, appendix A) and Node's words for a connection that fails. */
const serverCodes: [RegExp, TroubleKind][] = [
  [/^(53100|53200)$/, 'full'],
  [/^(53300|55P03|40P01|57014)$/, 'busy'],
  [/^(25006|42501)$/, 'read-only'],
  [/^(28P01|28000)$/, 'not let in'],
  [/^3D000$/, 'missing'],
  [/^(57P0[1-5]|08\w{3})$/, 'cannot open'],
  [/^(XX001|XX002)$/, 'damaged'],
  [/^58030$/, 'disk'],
  [/^(ECONNREFUSED|ENOTFOUND|ECONNRESET|ETIMEDOUT|EHOSTUNREACH|EPIPE|EAI_AGAIN)$/, 'cannot open'],
];

/** The trouble behind a driver's error; undefined where it is something else. */
export function troubleOf(error: unknown, place: string): DatabaseTrouble | undefined {
  if (error instanceof DatabaseTrouble) return error;
  const { code, errcode, message } = error as { code?: unknown; errcode?: unknown; message?: unknown };
  const known = sqliteCodes.find(([number]) => typeof errcode === 'number' && (errcode & 255) === number);
  if (known) return new DatabaseTrouble(known[1], place, '', { cause: error });
  if (code === 'ENOSPC') return new DatabaseTrouble('full', place, '', { cause: error });
  const [, kind] = serverCodes.find(([pattern]) => pattern.test(String(code))) ?? [];
  // pg has no code for a connection that ends under a query or does not come about in time.
  const cutOff =
    /^(Connection terminated|timeout exceeded when trying to connect|Query read timeout|timeout expired)|not queryable/.test(
      String(message),
    );
  if (kind || cutOff)
    return new DatabaseTrouble(kind ?? 'cannot open', place, code ? String(code) : '', {
      cause: error,
      server: true,
    });
  return undefined;
}

export function isServer(place: string): boolean {
  return /^postgres(ql)?:/.test(place);
}

/** As it may be shown and logged. */
export function withoutPassword(place: string): string {
  return place
    .replace(/^(postgres(?:ql)?:\/\/[^:@/?#]*):[^@/]*@/, '$1@')
    .replace(/([?&]password=)[^&]*/i, '$1…');
}
