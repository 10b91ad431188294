import { useMemo } from 'react';
import { diameterAt } from '../../../engine/bench/diameter-profile.ts';
import { readStationList } from '../../../engine/bench/start-list.ts';
import { type JudgedTipRepairs, judgeTipRepairs } from '../../../engine/flow/judged-tip-repair.ts';
import { repairBrokenTip, tubeAfter } from '../../../engine/repair/broken-tip.ts';
import { shortenRod } from '../../../engine/repair/shortened-rod.ts';
import { tipRepairInWords } from '../../../words/tip-repair.ts';
import { Field } from '../../fields/field.tsx';
import { useBench } from '../../read/bench.tsx';
import type { Build } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { ownMarks, useRodSheet } from '../../read/use-rod-sheet.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { siOf, textOf } from '../../read/values.ts';
import { GuideFates } from './guide-fates.tsx';
import { TipDrawing } from './tip-drawing.tsx';
import { TubeWords } from './tube-words.tsx';

/** With a build on record: its diameters, marks and bend. */
export function RecordedTip({ ticket }: { ticket: Build }) {
  const { choices, profile, stiffness } = useBench();
  const lostM = siOf(ticket.single('damage'), 'lost');
  const model = useRodSheet();
  const marks = choices?.guides.map(({ stationM }) => stationM) ?? [];
  const known = marks.every((mark) => mark !== undefined) ? marks : undefined;
  const rods = useMemo(() => {
    if (lostM === undefined || !model?.sheet) return undefined;
    const { kg } = model.sheet.loads;
    const loadKg = kg[Math.floor(kg.length / 2)] ?? 0.1;
    return shortenRod({ tables: model.tables, freeLengthM: model.sheet.rod.lengthM, lostM, loadKg });
  }, [model, lostM]);
  const judged = useMemo(() => {
    const sheet = ownMarks(model?.sheet);
    if (lostM === undefined || !sheet) return undefined;
    return judgeTipRepairs({ request: sheet.ladder.ladder, fromTipM: sheet.field.fromTipM, lostM });
  }, [model, lostM]);
  return (
    <>
      <TipHelper
        ticket={ticket}
        stationsM={known}
        outsideM={lostM === undefined ? undefined : diameterAt(profile, lostM)}
        tipOutsideM={diameterAt(profile, 0)}
        judged={judged}
        loadsKg={model?.sheet?.loads.kg}
      />
      {rods ? (
        <TipDrawing rods={rods} measured={stiffness.solved !== undefined} />
      ) : (
        lostM !== undefined && (
          <p className="quiet">
            The bend before and after needs the sections and a diameter of the build on record, and a grip.
          </p>
        )
      )}
    </>
  );
}

interface TipHelperProps {
  ticket: Build;
  /** From the record, where it has them. */
  stationsM?: readonly number[];
  outsideM?: number;
  tipOutsideM?: number;
  /** How the rod bends with the guides left and moved, where the blank is on record. */
  judged?: JudgedTipRepairs;
  loadsKg?: readonly number[];
}

/** The tube that fits and the guides that move; from the record or from what is measured at the counter. */
export function TipHelper(props: TipHelperProps) {
  const { ticket, stationsM, outsideM, tipOutsideM, judged, loadsKg = [] } = props;
  const sentence = useSentence();
  const { system } = useShop();
  const damage = ticket.single('damage');
  const lostM = siOf(damage, 'lost');
  const measuredM = siOf(damage, 'outsideAtBreak');
  const typed = textOf(damage, 'stations');
  const list =
    typed === undefined ? undefined : readStationList(typed, { system, from: 'tip', blankLengthM: 10 });
  const stations = stationsM ?? (list?.ok ? list.fromTipM : undefined);
  const atBreakM = measuredM ?? outsideM;
  const repair = useMemo(
    () =>
      lostM === undefined || stations === undefined
        ? undefined
        : repairBrokenTip({ lostM, guidesFromTipM: stations }),
    [lostM, stations],
  );
  return (
    <>
      <div className="fields-row">
        <Field path={['damage', '-', 'lost']} />
        <Field path={['damage', '-', 'outsideAtBreak']} usual={outsideM} />
      </div>
      {!stationsM && (
        <Field
          path={['damage', '-', 'stations']}
          pale={system === 'mm' ? '100 215 340 480 635' : '4 8 1/2 13 1/2 19 25'}
        />
      )}
      {list && !list.ok && <p className="attention">{list.findings[0] && sentence(list.findings[0])}</p>}
      {atBreakM !== undefined && (
        <TubeWords
          after={tubeAfter(atBreakM)}
          outsideM={atBreakM}
          measured={measuredM !== undefined}
          before={tipOutsideM === undefined ? undefined : tubeAfter(tipOutsideM)}
        />
      )}
      {judged ? <JudgedFates judged={judged} loadsKg={loadsKg} /> : repair && <GuideFates repair={repair} />}
      {lostM === undefined && (
        <p className="quiet">
          Measure what is gone against the other pieces, or against the record’s length.
        </p>
      )}
    </>
  );
}

/** Leaving the guides beside moving them, read on the blank on record; the other way folded. */
function JudgedFates({ judged, loadsKg }: { judged: JudgedTipRepairs; loadsKg: readonly number[] }) {
  const { writer } = useShop();
  const { deed, why } = tipRepairInWords(judged, loadsKg, writer);
  const { leave, move, proposed } = judged;
  const moves = proposed === 'move' && move;
  const other = moves ? leave : move;
  return (
    <>
      <p>
        <strong>{deed}</strong> {why.join(' ')}
      </p>
      <GuideFates repair={(moves || leave).repair} />
      {other && (
        <details>
          <summary>{moves ? 'Leave them as they are' : 'Move them all the same'}</summary>
          <GuideFates repair={other.repair} label="Guides, the other way" />
        </details>
      )}
    </>
  );
}
