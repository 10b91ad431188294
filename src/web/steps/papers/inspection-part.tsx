import { useState } from 'react';
import { Button } from 'react-aria-components';
import { inspectionPoints } from '../../../engine/delivery/inspection.ts';
import type { Row } from '../../../record/document.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { inspectionInWords } from '../../../words/inspection.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';
import { RowsTable } from './rows-table.tsx';

/** The rod against its tolerances, before it leaves. */
export function InspectionPart() {
  const { rows, write, newRowId } = useBuild();
  const { blank } = useBench();
  const { writer } = useShop();
  const list = rows('inspection');
  const [isNew, setNew] = useState(false);
  const layOut = () => {
    setNew(true);
    write(
      'inspectionList',
      inspectionPoints.flatMap((point, i): Change[] => {
        const id = newRowId();
        return rowChanges('inspection', id, { order: i, point });
      }),
    );
  };
  const usual = (row: Row) => inspectionInWords(textOf(row, 'point'), { lengthM: blank?.lengthM }, writer);
  if (list.length === 0) {
    return (
      <Part anchor="inspection" title="Inspection" aside="with tolerances a customer would hold it to">
        <div className="print-line" data-path="inspection/new" tabIndex={-1}>
          <Button className="button button-main" onPress={layOut}>
            Lay out the inspection list
          </Button>
        </div>
      </Part>
    );
  }
  return (
    <Part
      anchor="inspection"
      folded
      startOpen={isNew}
      holds={['inspection/']}
      title="Inspection"
      aside="tolerances are common practice, no source; change any of them"
    >
      <RowsTable
        label="Inspection list"
        collection="inspection"
        rows={list}
        foldsFirst
        columns={[
          {
            field: 'item',
            head: 'Looked at',
            label: (n) => `Point ${n}`,
            folds: true,
            pale: (row) => usual(row)?.item,
          },
          {
            field: 'tolerance',
            head: 'Tolerance',
            label: (n) => `Tolerance of point ${n}`,
            folds: true,
            pale: (row) => usual(row)?.tolerance,
          },
          { field: 'found', head: 'Found', label: (n) => `Found at point ${n}`, folds: true },
          { field: 'verdict', head: 'Verdict', label: (n) => `Verdict on point ${n}` },
        ]}
        strike={{ deed: 'removePoint', thing: (n) => `point ${n}` }}
      />
      <div className="fields-row">
        <Field path={['delivery', '-', 'inspectedBy']} />
        <Field path={['delivery', '-', 'inspectedAt']} />
      </div>
    </Part>
  );
}
