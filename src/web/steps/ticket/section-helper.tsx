import { useMemo } from 'react';
import { replaceSection } from '../../../engine/repair/replaced-section.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useBench } from '../../read/bench.tsx';
import type { Build } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { numberOf, siOf } from '../../read/values.ts';

/** A new section in the place of one on record. */
export function SectionHelper({ ticket }: { ticket: Build }) {
  const { bench, choices } = useBench();
  const { system } = useShop();
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
  const length = (lengthM: number) => formatLength(lengthM, { system, denominator: 16, decimals: 0 });
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
      {repair && (
        <>
          <p>
            The rod becomes <Figure text={length(repair.lengthM)} />
            {Math.abs(repair.longerByM) < 0.0005 ? (
              ', as long as it was'
            ) : (
              <>
                , <Figure text={length(Math.abs(repair.longerByM))} />{' '}
                {repair.longerByM > 0 ? 'longer' : 'shorter'}
              </>
            )}
            . Its stiffness on record holds for the old section: read the blank again before a layout is
            trusted, and find the spine of the new section.
          </p>
          <TableFrame label="Guides on the new section and beside it">
            <table className="figures-table">
              <thead>
                <tr>
                  <th scope="col">Guide</th>
                  <th scope="col">Section</th>
                  <th scope="col">From its tip end</th>
                  <th scope="col">From the tip</th>
                  <th scope="col">To do</th>
                </tr>
              </thead>
              <tbody>
                {repair.marks.map((mark) => (
                  <tr key={mark.guide}>
                    <th scope="row">{mark.guide}</th>
                    <td>{mark.section}</td>
                    <td>
                      {mark.fromOwnTipM === undefined ? '–' : <Figure text={length(mark.fromOwnTipM)} />}
                    </td>
                    <td>{mark.fromTipM === undefined ? '–' : <Figure text={length(mark.fromTipM)} />}</td>
                    <td className={mark.rewrapped ? undefined : 'quiet'}>
                      {mark.fromTipM === undefined
                        ? 'no place on the new section: mark it anew'
                        : mark.rewrapped
                          ? 'wrap it on the new section'
                          : 'stays'}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableFrame>
        </>
      )}
    </>
  );
}
