import { type SetGuide, typicalOpeningM } from '../../engine/guides/check-guide-set.ts';
import { formatMm } from '../../engine/units/format-quantity.ts';
import { NumberField } from '../fields/number-field.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TableFrame } from '../shell/table-frame.tsx';

/** Opening and feet of each guide, and its wrap: typical ones pale, measured ones in ink. */
export function OpeningsTable({ set, recorded }: { set: readonly SetGuide[]; recorded: boolean }) {
  if (!recorded)
    return <p className="quiet">Enter your own guides under Layout; openings are measured here.</p>;
  return (
    <TableFrame label="Openings and feet">
      <table className="figures-table openings-table">
        <thead>
          <tr>
            <th scope="col">Guide</th>
            <th scope="col">Clear opening</th>
            <th scope="col">Width of a foot</th>
            <th scope="col">Feet</th>
            <th scope="col">Length of one foot</th>
            <th scope="col">Own length of its wrap</th>
          </tr>
        </thead>
        <tbody>
          {set.map(({ id, kind, size }, index) => {
            const typical = typicalOpeningM(size);
            return (
              <tr key={id}>
                <th scope="row">
                  {index + 1} <span className="quiet small">{`${kind} ${size}`}</span>
                </th>
                <td>
                  <QuantityField
                    label={`Opening of guide ${index + 1}`}
                    labelHidden
                    path={['guides', id, 'opening']}
                    placeholder={typical === undefined ? 'not known' : `${formatMm(typical)} typical`}
                  />
                </td>
                <td>
                  <QuantityField
                    label={`Foot’s width of guide ${index + 1}`}
                    labelHidden
                    path={['guides', id, 'footWidth']}
                  />
                </td>
                <td>
                  <NumberField
                    label={`Feet of guide ${index + 1}`}
                    labelHidden
                    path={['guides', id, 'feet']}
                    placeholder="1 or 2"
                  />
                </td>
                <td>
                  <QuantityField
                    label={`Length of one foot of guide ${index + 1}`}
                    labelHidden
                    path={['guides', id, 'oneFoot']}
                  />
                </td>
                <td>
                  <QuantityField
                    label={`Wrap on guide ${index + 1}`}
                    labelHidden
                    path={['guides', id, 'wrapLength']}
                    placeholder="by its place"
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </TableFrame>
  );
}
