import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { blankTorsion } from '../../../engine/flow/blank-torsion.ts';
import { rodKindOf } from '../../../engine/kinds/rod-kinds.ts';
import { twistSheet } from '../../../sheets/twist-sheet.ts';
import { torsionInWords } from '../../../words/round.ts';
import { twistSteps } from '../../../words/twist-steps.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { tablesOf } from '../../read/tables-of.ts';
import { siOf } from '../../read/values.ts';

/** How stiff the blank is in twist: typical of its material, stated, or read with a bar across it. */
export function TwistPart() {
  const { rows, write, newRowId } = useBuild();
  const { bench, blank, choices, profile, stiffness } = useBench();
  const torsion = useMemo(() => {
    const tables = bench && tablesOf(stiffness.solved, profile, bench.material);
    return bench && blank && tables ? blankTorsion(bench, tables, blank.lengthM) : undefined;
  }, [bench, blank, profile, stiffness.solved]);
  if (!choices || (rodKindOf(choices.rodKind).flyLine && !choices.spiral)) return null;
  const twists = rows('twists');
  const add = () => write('addTwist', [{ path: ['twists', newRowId(), 'order'], value: twists.length + 1 }]);
  return (
    <BuildFields findings={torsion?.findings ?? []}>
      <Part
        folded
        startOpen={twists.length > 0}
        holds={['twists/', 'twistTest/', 'blank/-/twistShare']}
        title="Stiffness in twist"
        aside="for guides on top or in a spiral"
      >
        {torsion && <p role="status">{torsionInWords(torsion)}</p>}
        <ol className="small">
          {twistSteps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
        <FieldsRow of="twistTest" names={['barFromTip', 'clampFromTip']} />
        {twists.map(({ id }, index) => (
          <fieldset key={id} className="swing-row" data-group="">
            <legend className="field-label">Weight {index + 1}</legend>
            <div className="fields-row">
              {['hung', 'arm', 'left', 'right'].map((field) => (
                <Field key={field} path={['twists', id, field]} />
              ))}
            </div>
            <Button
              className="plain small card-remove screen-only"
              onPress={() => write('removeTwist', [{ path: ['twists', id, 'gone'], value: true }])}
            >
              Remove weight {index + 1}
            </Button>
          </fieldset>
        ))}
        <Button className="button" onPress={add}>
          {twists.length === 0 ? 'Read the bar' : 'Another weight'}
        </Button>
        <PrintTwist />
        <Field path={['blank', '-', 'twistShare']} />
        <p className="small quiet">
          Typical shares follow from how fibres lie in the wall, which no maker publishes: between the ends a
          judgement of ours. Readings come before a stated share. One bar cannot tell whether the share is the
          same all along the blank.
        </p>
      </Part>
    </BuildFields>
  );
}

/** The bar's steps and its readings as a sheet of paper with boxes to fill in. */
function PrintTwist() {
  const { single, rows } = useBuild();
  const { writer } = useShop();
  const place = single('twistTest');
  const twist = {
    barFromTipM: siOf(place, 'barFromTip'),
    clampFromTipM: siOf(place, 'clampFromTip'),
    weights: rows('twists').map((row) => ({ massKg: siOf(row, 'hung'), armM: siOf(row, 'arm') })),
  };
  return (
    <PrintButton sheet="twist" draw={(on) => [twistSheet(twist, { ...on, writer })]}>
      Print the sheet for the bar
    </PrintButton>
  );
}
