/** What guides, thread and finish change: bare blank against finished rod, as a range where only that is known. */
import type { FreeRod } from '../bench/free-rod.ts';
import { bend } from '../bend/bend.ts';
import { frequency } from '../frequency/frequency.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { massForThirdKg } from '../layout/tip-load.ts';
import { standardGravity } from '../units/gravity.ts';
import { type FinishedRange, type FinishedRod, finishedRod, type RodToDress } from './finished-rod.ts';

/** `loose`: wraps as a soft sleeve; `bonded`: every guide's foot one with the blank. */
export interface BareAndFinished {
  bare: number;
  loose: number;
  bonded: number;
}
export interface FinishEffects {
  addedKg: FinishedRange['addedKg'];
  /** First frequency, clamped at the grip; undefined where the blank has no mass. */
  firstHz?: BareAndFinished;
  /** Clamped level at the grip, this weight at the tip: how far the tip hangs below the clamp. */
  tipDropM: BareAndFinished;
  hungKg: number;
  /** Largest ratio to the limits for the same marks; `bare` is the rod that the marks were placed on. */
  worst: BareAndFinished;
}

export interface RodToFinish extends RodToDress {
  /** Bare, in front of the grip. */
  rod: FreeRod;
  ladder: LadderRequest;
}

/** Hung where no weight drops the tip by a third of the free length. */
const anyKg = 0.1;

export function finishEffects(parts: RodToFinish, marksFromTipM: readonly number[]): FinishEffects {
  const { rod, ladder } = parts;
  const hungKg = massForThirdKg(rod) ?? anyKg;
  const finished = finishedRod(parts, marksFromTipM);
  const bare: FinishedRod = { rod, masses: [] };
  const each = (read: (of: FinishedRod) => number): BareAndFinished => ({
    bare: read(bare),
    loose: read(finished.loose),
    bonded: read(finished.bonded),
  });
  const hz = each(firstHz);
  return {
    addedKg: finished.addedKg,
    firstHz: Number.isFinite(hz.bare) ? hz : undefined,
    tipDropM: each((of) => tipDropM(of, hungKg)),
    hungKg,
    worst: each((of) => readLadder(makeLadder({ ...ladder, rod: of.rod }), marksFromTipM).worst),
  };
}

/** Clamped at the grip; NaN where nothing has mass. */
export function firstHz({ rod, masses }: FinishedRod): number {
  const answer = frequency({ rod, masses, modes: 1 });
  return answer.status === 'refused' ? Number.NaN : answer.hz[0];
}

function tipDropM({ rod, masses }: FinishedRod, hungKg: number): number {
  const load = { tip: { xN: 0, yN: -hungKg * standardGravity } };
  return -bend({ rod, masses, buttAngleRad: 0, load }).points[0].yM;
}
