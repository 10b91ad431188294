import { useMemo } from 'react';
import type { AssembledBlank } from '../../engine/bench/assemble.ts';
import type { Bench } from '../../engine/bench/bench.ts';
import { diameterAt } from '../../engine/bench/diameter-profile.ts';
import { dressWraps } from '../../engine/finish/dressing.ts';
import type { Choices } from '../../engine/flow/choices.ts';
import { type Balance, balanceOf, type PartMass, taperedTubeCentreM } from '../../engine/handle/balance.ts';
import { type HandleParts, handleRoom } from '../../engine/handle/handle-parts.ts';
import { type HandlePlan, planHandle } from '../../engine/handle/plan-handle.ts';
import { commonHandle } from '../../engine/kinds/common-build.ts';
import { type HandlePartPlace, handlePartPlaces } from '../../engine/kinds/handle-parts.ts';
import type { Row } from '../../record/document.ts';
import { readRodKind } from '../../record/read-choices.ts';
import { type FinishChoices, readFinish } from '../../record/read-finish.ts';
import { readHandleParts } from '../../record/read-handle.ts';
import { useBench } from './bench.tsx';
import { useBuild } from './build-context.ts';
import { useWraps, type WrapsOnRod } from './use-wraps.ts';
import { siOf } from './values.ts';

interface HandleOnBench {
  parts: HandleParts;
  /** Undefined until a diameter was measured. */
  plan: HandlePlan | undefined;
  balance: Balance;
  /** Parts that have no mass yet and are left out of the balance. */
  unweighed: string[];
}

/** The handle planned along the measured diameters, and where the rod with it would balance. */
export function useHandlePlan(): HandleOnBench {
  const { single } = useBuild();
  const { filled, bench, blank, profile, choices } = useBench();
  const wraps = useWraps();
  return useMemo(() => {
    const rodKind = readRodKind(filled);
    const used = bench?.handle ?? commonHandle(rodKind, 2.743);
    const parts = readHandleParts(filled, used.gripFrontFromButtM);
    const butt = blank?.sections.at(-1)?.visible;
    const plan =
      blank && butt
        ? planHandle(parts, { lengthM: blank.lengthM, buttSectionM: butt.toTipM - butt.fromTipM, profile })
        : undefined;
    const weighed = [
      ...handleMasses(single('handle'), parts, handlePartPlaces(rodKind, used, parts)),
      ...(bench && blank ? blankMasses(bench, blank, profile) : []),
      ...(choices && blank ? guideMasses(choices, blank) : []),
      ...(blank && wraps ? dressingMasses(wraps, readFinish(filled), blank) : []),
    ];
    return {
      parts,
      plan,
      balance: balanceOf(weighed.filter((part) => part.massKg > 0)),
      unweighed: weighed.filter((part) => part.massKg <= 0).map(({ name }) => name),
    };
  }, [filled, single, bench, blank, profile, choices, wraps]);
}

function handleMasses(row: Row, parts: HandleParts, places: readonly HandlePartPlace[]): PartMass[] {
  const { grip, seat } = handleRoom(parts);
  const middle = (place: { fromM: number; toM: number } | undefined) =>
    place ? (place.fromM + place.toM) / 2 : parts.gripFrontM / 2;
  return [
    { name: 'grip', massKg: siOf(row, 'gripMass') ?? 0, fromButtM: middle(grip) },
    { name: 'seat', massKg: siOf(row, 'seatMass') ?? 0, fromButtM: middle(seat) },
    ...furtherGrips(row, places),
    ...(parts.keeperAheadM === undefined
      ? []
      : [
          {
            name: 'keeper',
            massKg: siOf(row, 'keeperMass') ?? 0,
            fromButtM: parts.gripFrontM + parts.keeperAheadM,
          },
        ]),
    {
      name: 'reel',
      massKg: siOf(row, 'reelMass') ?? 0,
      fromButtM: siOf(row, 'reelFromButt') ?? middle(seat),
    },
  ];
}

/** Rear grip and second grip of the rods that have them, each in its own middle. */
function furtherGrips(row: Row, places: readonly HandlePartPlace[]): PartMass[] {
  const fields = { 'rear grip': 'rearGripMass', 'second grip': 'secondGripMass' } as const;
  return places.flatMap(({ name, fromButtM, toButtM }) =>
    name in fields
      ? [
          {
            name,
            massKg: siOf(row, fields[name as keyof typeof fields]) ?? 0,
            fromButtM: (fromButtM + toButtM) / 2,
          },
        ]
      : [],
  );
}

function blankMasses(
  bench: Bench,
  blank: AssembledBlank,
  profile: Parameters<typeof diameterAt>[0],
): PartMass[] {
  return bench.sections.map((section, index) => {
    const { ends } = blank.sections[index];
    const thick = diameterAt(profile, ends.toTipM) ?? 1;
    const thin = diameterAt(profile, ends.fromTipM) ?? 1;
    const fromOwnTip =
      section.balanceFromOwnTipM ?? section.lengthM - taperedTubeCentreM(section.lengthM, thick, thin);
    return {
      name: section.name,
      massKg: section.massKg ?? 0,
      fromButtM: blank.lengthM - ends.fromTipM - fromOwnTip,
    };
  });
}

/** Guides without a mark are not on the rod yet. */
function guideMasses(choices: Choices, blank: AssembledBlank): PartMass[] {
  const placed = choices.guides.flatMap(({ kind, massKg, stationM }) =>
    stationM === undefined ? [] : [{ name: kind, massKg, fromButtM: blank.lengthM - stationM }],
  );
  return [...placed, { name: 'tip-top', massKg: choices.tipTop.massKg, fromButtM: blank.lengthM }];
}

/** Thread and the coats of finish, each wrap at its place. */
function dressingMasses({ plan }: WrapsOnRod, finish: FinishChoices, blank: AssembledBlank): PartMass[] {
  const { laidWidthM } = plan;
  const { coatThicknessM, coatsInAll: coats, footHeightM } = finish;
  return dressWraps(plan.wraps, { laidWidthM, coatThicknessM, coats, footHeightM }).map(
    ({ fromTipM, toTipM, threadKg, finishKg }) => ({
      name: 'thread and finish',
      massKg: threadKg + finishKg,
      fromButtM: blank.lengthM - (fromTipM + toTipM) / 2,
    }),
  );
}
