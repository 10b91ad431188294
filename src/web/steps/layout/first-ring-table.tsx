import { Button } from 'react-aria-components';
import { ringsOffered } from '../../../engine/flow/first-guide.ts';
import type { ReelLineAnswer } from '../../../engine/flow/reel-line.ts';
import type { ReelLineQuestion } from '../../../engine/flow/reel-line-question.ts';
import { guideName } from '../../../engine/kinds/guides.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare } from '../../../words/places.ts';
import { Figure } from '../../fields/figure.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { TableFrame } from '../../parts/sheet/table.tsx';
import type { ReelLine } from './use-reel-line.ts';

export interface FirstRingTableProps {
  line: ReelLine;
  question: ReelLineQuestion;
  answer: ReelLineAnswer;
  writer: LadderWriter;
}

/** Every ring that keeps the limits somewhere, and from where to where: the shaded bars of the drawing in figures. */
export function FirstRingTable({ line, question, answer, writer }: FirstRingTableProps) {
  const { source, freeM, guides } = question;
  const first = guides[guides.length - 1];
  const rings = ringsOffered(question)
    .map((ring, i) => ({ ring, stretches: answer.region.rings[i]?.stretches ?? [] }))
    .filter(({ stretches }) => stretches.length > 0);
  if (rings.length === 0) return null;
  const fromReel = (fromTipM: number) => freeM - source.alongM - fromTipM;
  return (
    <Fold title="Where each ring may stand" aside={`from the ${reelEdge(question)}, within your limits`}>
      <TableFrame label="Rings that keep the limits">
        <table className="figures-table">
          <tbody>
            {rings.map(({ ring, stretches }) => (
              <tr key={guideName(ring)}>
                <th scope="row">{guideName(ring)}</th>
                <td>
                  <Figure
                    text={stretches
                      .map(
                        ({ fromTipM, toTipM }) =>
                          `${bare(writer.tick(fromReel(toTipM)))} to ${writer.tick(fromReel(fromTipM))}`,
                      )
                      .join(', ')}
                  />
                </td>
                <td className="screen-only">
                  {guideName(ring) === guideName(first) ? (
                    'yours'
                  ) : (
                    <Button
                      className="button"
                      onPress={() => line.takeFirst(nearest(stretches, first.fromTipM), ring)}
                    >
                      Use it<span className="visually-hidden">: {guideName(ring)}</span>
                    </Button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="small quiet">
          {line.ownRings ? 'From your shop’s guides.' : 'Typical sizes; list your own under Guides.'}
        </p>
      </TableFrame>
    </Fold>
  );
}

export function reelEdge({ source }: ReelLineQuestion): string {
  return 'lipDiameterM' in source ? 'lip' : 'level-wind';
}

/** Inside the stretch by a few millimetres, so that the next reading does not undo it. */
function nearest(stretches: readonly { fromTipM: number; toTipM: number }[], atM: number): number {
  const places = stretches.map(({ fromTipM, toTipM }) => {
    const insetM = Math.min(0.003, (toTipM - fromTipM) / 2);
    return Math.min(toTipM - insetM, Math.max(fromTipM + insetM, atM));
  });
  return places.reduce((best, place) => (Math.abs(place - atM) < Math.abs(best - atM) ? place : best));
}
