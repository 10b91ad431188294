import { useMemo } from 'react';
import { type JudgedSectionRepair, judgeSectionRepair } from '../../../engine/flow/judged-section-repair.ts';
import { replaceSection, type SectionRepair } from '../../../engine/repair/replaced-section.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { sectionRepairInWords } from '../../../words/section-repair.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { useBench } from '../../read/bench.tsx';
import type { Build } from '../../read/build-context.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { ownMarks, useRodSheet } from '../../read/use-rod-sheet.ts';
import { numberOf, siOf } from '../../read/values.ts';
import { SectionMarks } from './section-marks.tsx';

/** A new section in the place of one on record. */
export function SectionHelper({ ticket }: { ticket: Build }) {
  const { bench, choices } = useBench();
  const damage = ticket.single('damage');
  const [number, newLengthM, newOverlapM] = [
    numberOf(damage, 'section'),
    siOf(damage, 'newLength'),
    siOf(damage, 'newOverlap'),
  ];
  const repair = useMemo(() => {
    if (!bench || !number || !newLengthM || number > bench.sections.length) return undefined;
    const guidesFromTipM = (choices?.guides ?? []).flatMap(({ stationM }) => stationM ?? []);
    return replaceSection({
      sections: bench.sections,
      index: number - 1,
      newLengthM,
      newOverlapM,
      guidesFromTipM,
    });
  }, [bench, choices, number, newLengthM, newOverlapM]);
  return (
    <>
      <div className="fields-row">
        <Field path={['damage', '-', 'section']} />
        <Field path={['damage', '-', 'newLength']} />
        <Field path={['damage', '-', 'newOverlap']} />
      </div>
      {number !== undefined && bench && number > bench.sections.length && (
        <p className="attention">
          The record has {bench.sections.length} sections; there is no number {number}.
        </p>
      )}
      {repair && <NewSection repair={repair} />}
    </>
  );
}

function NewSection({ repair }: { repair: SectionRepair }) {
  const { system, writer } = useShop();
  const sheet = ownMarks(useRodSheet()?.sheet);
  const judged = useMemo(
    () => sheet && judgeSectionRepair({ request: laidOf(sheet), repair }),
    [sheet, repair],
  );
  const length = (lengthM: number) => formatLength(lengthM, { system, denominator: 16, decimals: 0 });
  const { longerByM, blank } = repair;
  const words = judged && sheet && sectionRepairInWords(judged, sheet.loads.kg, writer);
  return (
    <>
      <p>
        The rod becomes <Figure text={length(blank.lengthM)} />
        {Math.abs(longerByM) < 0.0005 ? (
          ', as long as it was'
        ) : (
          <>
            , <Figure text={length(Math.abs(longerByM))} /> {longerByM > 0 ? 'longer' : 'shorter'}
          </>
        )}
        . Its stiffness on record holds for the old section: read the blank again before a layout is trusted,
        and find the spine of the new section.
      </p>
      {words && (
        <p>
          <strong>{words.deed}</strong> {words.why.join(' ')} This takes the new section for the old one at
          its new length.
        </p>
      )}
      <SectionMarks repair={repair} length={length} anewFromTipM={anewOf(judged)} />
    </>
  );
}

/** Neither the start nor the pins of the old rod bind the new section. */
function laidOf({ ladder, request }: SheetModel) {
  const { keepOut, footM, intervals } = request;
  return { ...ladder.ladder, keepOut, footM, intervals };
}

function anewOf(judged: JudgedSectionRepair | undefined): readonly number[] | undefined {
  return judged?.proposed === 'anew' ? judged.anew?.fromTipM : undefined;
}
