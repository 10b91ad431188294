import type { LiveKnown } from '../../../image/live/look-live.ts';
import type { DocumentState } from '../../../record/operation.ts';
import { readLoadTests } from '../../../record/read-load-tests.ts';
import { fewestMarks, placesOn, readWalls, type Wall, wallOfMarks } from '../../../record/read-walls.ts';
import { tracedPhoto } from '../../../record/traced-curves.ts';
import { measuredSigmaM } from '../../parts/stand/where-the-blank-is.ts';

type Known = Pick<LiveKnown, 'wall' | 'clamp'>;

/** The marks' own error and the clamp's play between two days. */
const holdSigmaM = 0.005;

/**
 * Where the marks are and the blank leaves its hold: by the shop's wall that the marks seen belong to, else by this
 * build's earlier pictures. Before any mark is seen the wall measured last stands in where no picture tells.
 */
export function knownNow(build: DocumentState, shop: DocumentState, seen: readonly number[]): Known {
  const walls = readWalls(shop);
  const pictures = knownOfPictures(build);
  const wall = wallOfMarks(walls, seen);
  if (wall) return knownOfWall(wall, pictures);
  if (pictures.wall.length >= fewestMarks) return pictures;
  const last = walls.findLast((one) => marksOf(one).length >= fewestMarks);
  return last ? knownOfWall(last, pictures) : pictures;
}

/** The hold by a picture before this wall, else by the tape on it. */
function knownOfWall(wall: Wall, pictures: ReturnType<typeof knownOfPictures>): Known {
  const isHere = placesOn(wall, pictures.holdSeenBy).size >= fewestMarks;
  const measured = wall.clampAtM && { atM: wall.clampAtM, sigmaM: measuredSigmaM };
  const clamp = (isHere ? pictures.clamp : undefined) ?? measured;
  return { wall: marksOf(wall), ...(clamp ? { clamp } : {}) };
}

function marksOf({ marks }: Wall): LiveKnown['wall'][number][] {
  return marks.flatMap(({ number, atM }) => (atM ? [{ number, atM }] : []));
}

/** What this build's earlier pictures tell: places of printed marks, and where the blank leaves its hold. */
function knownOfPictures(document: DocumentState): Known & { holdSeenBy: number[] } {
  const tests = readLoadTests(document);
  const places = new Map<number, readonly [number, number]>();
  for (const { number, atM, role } of tests.flatMap(({ photos }) =>
    photos.flatMap((photo) => photo.places),
  )) {
    if (role === 'mark' && number !== undefined && atM) places.set(number, atM);
  }
  const traced = tests.flatMap((test) => tracedPhoto(test) ?? []).at(-1);
  const hold = traced?.trace.points[0];
  return {
    wall: [...places].map(([number, atM]) => ({ number, atM })),
    holdSeenBy: traced?.photo.places.flatMap(({ number }) => number ?? []) ?? [],
    ...(hold ? { clamp: { atM: [hold.xM, hold.yM] as const, sigmaM: holdSigmaM } } : {}),
  };
}
