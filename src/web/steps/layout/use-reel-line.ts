import { useMemo } from 'react';
import type { ReelLineAnswer } from '../../../engine/flow/reel-line.ts';
import {
  type ReelLineGap,
  type ReelLineQuestion,
  type RingOnHand,
  reelLineQuestion,
} from '../../../engine/flow/reel-line-question.ts';
import { typicalRings } from '../../../engine/flow/rings-on-hand.ts';
import { placeGuide } from '../../../engine/layout/guide-moves.ts';
import { ringsOfRack } from '../../../record/rack.ts';
import { useBuild } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { besideLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import { firstRingChanges, ringChanges } from './ring-changes.ts';

export interface ReelLine {
  /** Undefined where a measure is missing, or reel and guide stand the wrong way about. */
  question: ReelLineQuestion | undefined;
  gap: ReelLineGap['needs'] | undefined;
  answer: ReelLineAnswer | undefined;
  working: boolean;
  failure: string | undefined;
  /** Whether the rings on hand are the shop's own. */
  ownRings: boolean;
  takeFirst(fromTipM: number, ring: RingOnHand): void;
  takeSizes(answer: ReelLineAnswer): void;
}

/** The line off the reel, worked out in the background, and the two deeds that follow from it. */
export function useReelLine(model: SheetModel): ReelLine {
  const { write, newRowId } = useBuild();
  const { rack, system } = useShop();
  const { choices, blank } = model;
  const shopRings = useMemo(() => ringsOfRack(rack), [rack]);
  const onHand = useMemo(
    () => (shopRings.length > 0 ? shopRings : typicalRings(choices, blank.lengthM)),
    [shopRings, choices, blank],
  );
  const asked = useMemo(() => {
    const { handle, diameters, field, ladder } = model;
    const parts = { handle, choices, blank, diameters, fromTipM: field.fromTipM, onHand };
    return model.unreadable ? undefined : reelLineQuestion({ ...parts, ladder: ladder.ladder });
  }, [model, choices, blank, onHand]);
  const question = asked && 'needs' in asked ? undefined : asked;
  const task = useMemo(() => (question ? { does: 'reelLine' as const, question } : undefined), [question]);
  const { answer, answered, working, failure } = useLongTask(task, besideLane);
  const writing = { model, choices, rack, system, newRowId };
  return {
    question: answered?.question ?? question,
    gap: asked && 'needs' in asked ? asked.needs : undefined,
    answer,
    working,
    failure,
    ownRings: shopRings.length > 0,
    takeFirst: (fromTipM, ring) => {
      const placed = placeGuide(model.field, choices.guides.length - 1, fromTipM);
      write('takeFirstRing', firstRingChanges(placed.fromTipM, ring, writing));
    },
    takeSizes: ({ steps }) => {
      const rings = steps.flatMap(({ guide, ring, already }) =>
        ring && !already ? [[guide, ring] as const] : [],
      );
      write('takeRingSizes', ringChanges(new Map(rings), writing));
    },
  };
}
