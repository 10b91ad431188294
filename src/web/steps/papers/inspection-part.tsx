import { Button } from 'react-aria-components';
import type { Change } from '../../../record/operation.ts';
import { inspectionList } from '../../../words/inspection.ts';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';

/** The rod against its tolerances, before it leaves. */
export function InspectionPart() {
  const { rows, write, newRowId } = useBuild();
  const { blank } = useBench();
  const { writer } = useShop();
  const list = rows('inspection');
  const layOut = () =>
    write(
      'inspectionList',
      inspectionList({ lengthM: blank?.lengthM }, writer).flatMap(({ item, tolerance }, i): Change[] => {
        const id = newRowId();
        return [
          { path: ['inspection', id, 'order'], value: i },
          { path: ['inspection', id, 'item'], value: item },
          { path: ['inspection', id, 'tolerance'], value: tolerance },
        ];
      }),
    );
  if (list.length === 0) {
    return (
      <Part anchor="inspection" title="Inspection" aside="with tolerances a customer would hold it to">
        <div className="print-line">
          <Button className="button" onPress={layOut}>
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
      holds={['inspection/']}
      title="Inspection"
      aside="tolerances are common practice, no source; change any of them"
    >
      <TableFrame label="Inspection list">
        <table className="figures-table papers-table stacked">
          <thead>
            <tr>
              <th scope="col">Looked at</th>
              <th scope="col">Tolerance</th>
              <th scope="col">Found</th>
              <th scope="col">Verdict</th>
              <th scope="col">
                <span className="visually-hidden">Strike</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {list.map((row, i) => (
              <tr key={row.id}>
                <td className="papers-wide papers-folds">
                  <Field labelHidden label={`Point ${i + 1}`} path={['inspection', row.id, 'item']} folds />
                </td>
                <td data-label="Tolerance">
                  <Field
                    labelHidden
                    label={`Tolerance of point ${i + 1}`}
                    path={['inspection', row.id, 'tolerance']}
                    folds
                  />
                </td>
                <td data-label="Found">
                  <Field
                    labelHidden
                    folds
                    label={`Found at point ${i + 1}`}
                    path={['inspection', row.id, 'found']}
                  />
                </td>
                <td data-label="Verdict">
                  <Field
                    labelHidden
                    label={`Verdict on point ${i + 1}`}
                    path={['inspection', row.id, 'verdict']}
                  />
                </td>
                <td>
                  <Button
                    className="plain"
                    onPress={() =>
                      write('removePoint', [{ path: ['inspection', row.id, 'gone'], value: true }])
                    }
                  >
                    Strike<span className="visually-hidden"> point {i + 1}</span>
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      <div className="fields-row">
        <Field path={['delivery', '-', 'inspectedBy']} />
        <Field path={['delivery', '-', 'inspectedAt']} />
      </div>
    </Part>
  );
}
