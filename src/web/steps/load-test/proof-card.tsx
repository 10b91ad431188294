import { Button } from 'react-aria-components';
import { judgeProof, type ProofVerdict, pencilM } from '../../../engine/load-test/judge-proof.ts';
import { formatDegrees, formatGrams } from '../../../engine/units/format-quantity.ts';
import type { Proof } from '../../../record/read-proofs.ts';
import { proofSheet } from '../../../sheets/proof-sheet.ts';
import { agreedInWords } from '../../../words/judging.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useWallLength } from './use-load-test.ts';

const verdictWords = {
  agrees: 'as predicted',
  off: '▲ off',
  'not-seen': '',
  'no-measure': 'no ± to judge by',
};

/** One prediction, the fields for what was seen, and the verdict. */
export function ProofCard({ proof }: { proof: Proof }) {
  const { write } = useBuild();
  const show = useWallLength();
  const verdict = judgeProof(proof.predicted, proof.seen);
  const hung = formatGrams(proof.hungKg, 1);
  const rows = proof.predicted.map((place, i) => ({
    name: i === 0 ? 'tip' : `flag ${i}, ${show(place.fromTipM)}`,
    out: withReach(show(place.outM), place.reach && show(Math.hypot(place.reach.outM, pencilM))),
    up: withReach(show(place.upM), place.reach && show(Math.hypot(place.reach.upM, pencilM))),
  }));
  const onPaper = { hung, buttAngle: formatDegrees(proof.buttAngleRad), guidesOn: proof.guidesOn, rows };
  return (
    <section className="proof-card" aria-label={`Proof with ${hung}`}>
      <Table
        label={`Predicted and seen under ${hung}`}
        className="proof-table"
        caption={
          <>
            {hung} on the tip{' '}
            <span className="quiet">
              butt {formatDegrees(proof.buttAngleRad)}, {proof.guidesOn ? 'guides on' : 'bare blank'},
              predicted {proof.madeAt.slice(0, 10)}
            </span>
          </>
        }
        heads={['Place, from tip', 'Outwards', 'Up', 'Seen outwards', 'Seen up', 'Verdict']}
      >
        {rows.map(({ name, out, up }, i) => (
          <tr key={proof.rowIds[i]}>
            <th scope="row">
              <Figure text={name} />
            </th>
            <td data-label="Outwards">
              <Figure text={out} />
            </td>
            <td data-label="Up">
              <Figure text={up} />
            </td>
            {(['seenOut', 'seenUp'] as const).map((field) => (
              <td key={field} data-label={field === 'seenOut' ? 'Seen outwards' : 'Seen up'}>
                <Field
                  label={`${name} seen ${field === 'seenOut' ? 'outwards' : 'up'} under ${hung}`}
                  labelHidden
                  path={['proofPlaces', proof.rowIds[i], field]}
                />
              </td>
            ))}
            <td className={verdict.places[i].verdict === 'off' ? 'attention' : 'quiet'}>
              {verdictWords[verdict.places[i].verdict]}
            </td>
          </tr>
        ))}
      </Table>
      <p className={verdict.agreed < verdict.counted ? 'attention' : ''} role="status">
        {meaning(verdict, hung)}
      </p>
      <Field path={['proofs', proof.id, 'setAside']} />
      <div className="print-line screen-only">
        <PrintButton sheet="proof" draw={(on) => [proofSheet(onPaper, on)]}>
          Proof sheet as PDF
        </PrintButton>
        <Button
          className="button"
          onPress={() => write('removeProof', [{ path: ['proofs', proof.id, 'gone'], value: true }])}
        >
          Remove
        </Button>
      </div>
    </section>
  );
}

function withReach(length: string, reach: string | undefined): string {
  return reach ? `${length} ± ${reach}` : `${length}, ± unknown`;
}

/** What agreement or a miss says about the marks, openly. */
function meaning({ counted, agreed, worst, tip, places }: ProofVerdict, hung: string): string {
  if (counted === 0 && places.some(({ verdict }) => verdict === 'no-measure')) {
    return 'How far this prediction may be off is not known, so nothing is judged: hang a weight under Blank, then predict another.';
  }
  if (counted === 0) return 'Enter what you saw; a place counts once both its figures stand.';
  const score = `${agreedInWords({ agreed, counted })}.`;
  if (agreed === counted) {
    return `${score} The marks may be trusted as far as ${hung} and what lies below it.`;
  }
  const how = tip === 'lower' ? 'The blank bends more than predicted. ' : '';
  const stiff = tip === 'higher' ? 'The blank bends less than predicted. ' : '';
  return `The prediction was wrong: ${score} ${how}${stiff}The largest miss is ${worst.toFixed(1)} times what was allowed. Check the butt’s angle and where the figures count from; if they stand, enter this weight under Blank as a test and place the guides again before you trust the marks.`;
}
