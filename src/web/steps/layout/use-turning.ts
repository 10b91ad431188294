import { useMemo, useState } from 'react';
import { keptTurn } from '../../../words/tape.ts';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { LadderSheet } from '../../worker/messages.ts';

/** A guide held somewhere round the blank, from the top towards the side that the spiral goes. */
export interface HeldRound {
  guide: number;
  fromTopRad: number;
}
export type Turning = ReturnType<typeof useTurning>;

/** Guides turned round the blank by hand: the reading follows at once, the record hears when the hand lets go. */
export function useTurning(model: SheetModel) {
  const { write } = useBuild();
  const [held, setHeld] = useState<HeldRound>();
  const inHand = useMemo(() => held && turnedSheet(model, held), [model, held]);
  const left = ({ guide, fromTopRad }: HeldRound) => {
    setHeld(undefined);
    const row = model.choices.guides[guide]?.id;
    if (row === undefined || Math.abs(model.round[guide].fromTopRad - fromTopRad) < 1e-6) return;
    write(`turnGuide:${guide + 1}`, [{ path: ['guides', row, 'around'], value: keptTurn(fromTopRad) }]);
  };
  return { held, inHand, hold: setHeld, left };
}

/** A ring turns as far as its foot does. */
export function turnedSheet({ ladder, round, choices }: SheetModel, held: HeldRound): LadderSheet {
  const { guides } = ladder.ladder;
  const toward = choices.spiral?.by === 'left' ? -1 : 1;
  const byRad = held.fromTopRad - round[held.guide].fromTopRad;
  const aroundRad = guides.aroundRad?.map((at, i) => (i === held.guide ? at - toward * byRad : at));
  return { ...ladder, ladder: { ...ladder.ladder, guides: { ...guides, aroundRad } } };
}
