import type { DocumentState } from './operation.ts';
import { type LoadPhoto, readPhoto } from './read-load-photo.ts';
import { oneOf, type RowReader, readRows } from './read-values.ts';

export interface LoadTest {
  id: string;
  madeAt: string;
  hungKg: number | undefined;
  buttAngleRad: number | undefined;
  rod: 'bare' | 'taped';
  heldFromTipM: number | undefined;
  leftOut: boolean;
  accepted: boolean;
  acceptedAt: string | undefined;
  note: string | undefined;
  report: string | undefined;
  /** One of the pictures of a stand by which the bare blank is measured. */
  stand: string | undefined;
  photos: LoadPhoto[];
}

/** What holds for all pictures of a stand. */
export interface Stand {
  id: string;
  madeAt: string;
  heldFromTipM: number | undefined;
  buttAngleRad: number;
  standOffM: number | undefined;
  leftOut: boolean;
  /** In the order they are taken. */
  tests: LoadTest[];
}

/** The load tests in the order they were made, pictures of a stand left out. Never throws on any state. */
export function readLoadTests(state: DocumentState): LoadTest[] {
  return readTests(state).filter(({ stand }) => stand === undefined);
}

/** The stands before which the bare blank is photographed. Never throws on any state. */
export function readStands(state: DocumentState): Stand[] {
  const tests = readTests(state);
  return readRows(state, 'stands').map((row) => ({
    id: row.id,
    madeAt: row.text('madeAt') ?? '',
    heldFromTipM: row.si('heldFromTip'),
    buttAngleRad: row.si('buttAngle') ?? 0,
    standOffM: row.si('standOff'),
    leftOut: row.flag('leftOut'),
    tests: tests.filter(({ stand }) => stand === row.id),
  }));
}

/** Every picture of the record, of load tests and of stands. */
export function readPhotos(state: DocumentState): LoadPhoto[] {
  return readTests(state).flatMap(({ photos }) => photos);
}

function readTests(state: DocumentState): LoadTest[] {
  const read = (collection: string) => readRows(state, collection);
  const rows = { places: read('photoPlaces'), distances: read('photoDistances'), traces: read('traces') };
  const attachments = read('attachments');
  const photos = read('loadPhotos');
  const stands = read('stands');
  return read('loadTests').flatMap((test) => {
    const named = test.text('stand');
    const stand = stands.find(({ id }) => id === named);
    // a stand put away takes its pictures along
    if (named !== undefined && !stand) return [];
    const own = photos.filter((photo) => photo.text('test') === test.id);
    return [{ ...readTest(test, stand), photos: own.map((one) => readPhoto(one, rows, attachments, stand)) }];
  });
}

function readTest(test: RowReader, stand: RowReader | undefined): Omit<LoadTest, 'photos'> {
  return {
    id: test.id,
    madeAt: test.text('madeAt') ?? '',
    hungKg: test.si('hung'),
    buttAngleRad: stand ? (stand.si('buttAngle') ?? 0) : test.si('buttAngle'),
    rod: stand ? 'bare' : (oneOf(test.text('rod'), ['bare', 'taped']) ?? 'taped'),
    heldFromTipM: stand ? stand.si('heldFromTip') : test.si('heldFromTip'),
    leftOut: stand ? stand.flag('leftOut') : test.flag('leftOut'),
    accepted: test.flag('accepted'),
    acceptedAt: test.text('acceptedAt'),
    note: test.text('note'),
    report: test.text('report'),
    stand: stand?.id,
  };
}

/** The test the builder accepted last; undefined where none was. */
export function lastAccepted(tests: readonly LoadTest[]): LoadTest | undefined {
  return tests
    .filter((test) => test.accepted)
    .sort((a, b) => (a.acceptedAt ?? a.madeAt).localeCompare(b.acceptedAt ?? b.madeAt))
    .at(-1);
}
