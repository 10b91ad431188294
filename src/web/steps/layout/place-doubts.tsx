import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { plusMinusInWords } from '../../../words/places.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table.tsx';
import type { PlaceDoubt } from '../../read/use-mark-spread.ts';

/** How sure each guide's best place is, apart from how far its mark may move. */
export function PlaceDoubts({ doubt, writer }: { doubt: PlaceDoubt; writer: LadderWriter }) {
  const { plusMinusM, stale, words } = doubt;
  return (
    <div className="place-doubts">
      {plusMinusM.length > 0 && (
        <TableFrame label="How sure is each place?" className="close-table">
          <table className="figures-table">
            <caption>
              How sure is each place?{' '}
              <span className="aside">{writer.units === 'inch' ? 'inches' : 'mm'}, 19 times in 20</span>
            </caption>
            <tbody>
              <tr>
                <th scope="row">guide</th>
                {plusMinusM.map((_, guide) => (
                  <th key={guide} scope="col">
                    {guide + 1}
                  </th>
                ))}
              </tr>
              <tr className={stale ? 'stale' : undefined}>
                <th scope="row">best place ±</th>
                {plusMinusM.map((of, guide) => (
                  <td key={guide} data-doubt="">
                    <Figure text={plusMinusInWords(of, writer)} />
                  </td>
                ))}
              </tr>
            </tbody>
          </table>
        </TableFrame>
      )}
      <p className={stale ? 'attention small' : 'quiet small'} role="status">
        {words}
      </p>
    </div>
  );
}
