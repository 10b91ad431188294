import { Link } from 'wouter';
import { type ProofRecord, proofRecord } from '../../../engine/load-test/proof-record.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { readProofs } from '../../../record/read-proofs.ts';
import { agreedInWords } from '../../../words/judging.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useAnswer } from '../../read/use-answer.ts';
import { api } from '../../store/open-document.ts';

/** The score over all blanks of the shop, and what it means where predictions were wrong. */
export function ProofRecordPart() {
  const { record, failure } = useProofRecord();
  return (
    <Part
      folded
      title="The score over all your blanks"
      aside="predicted against seen, every build but the demo"
    >
      {failure && <p role="alert">The other builds could not be read: {failure}.</p>}
      {record && record.counted === 0 && (
        <p className="quiet">
          Nothing was predicted and then seen yet, on any blank. Until it is, nothing here has been proved on
          a real blank.
        </p>
      )}
      {record && record.counted > 0 && <Score record={record} />}
    </Part>
  );
}

function Score({ record }: { record: ProofRecord }) {
  const { weights, blanks, setAside, wrong } = record;
  return (
    <>
      <p role="status">
        <strong>{agreedInWords(record)}</strong>, {weights} {weights === 1 ? 'weight' : 'weights'} on {blanks}{' '}
        {blanks === 1 ? 'blank' : 'blanks'}; a true ± lets 19 of 20 agree.
        {setAside > 0 && ` ${setAside} set aside by you do not count.`}
      </p>
      <p className={record.chance < 0.025 ? 'attention' : ''}>{whatItMeans(record)}</p>
      {wrong.length > 0 && <WrongTable wrong={wrong} />}
    </>
  );
}

function whatItMeans({ agreed, counted, chance, widen }: ProofRecord): string {
  if (chance < 0.025 && widen > 5) {
    return `The ± has been too small: with a true one so few would agree about ${inHundred(chance)}. A miss of more than five times what was allowed is no matter of a wider ±: do not cut thread to these marks before its cause is found. Look for what the misses below have in common: a butt’s angle not measured, a clamp that gives, a station from another datum.`;
  }
  if (chance < 0.025) {
    return `The ± has been too small: with a true one so few would agree about ${inHundred(chance)}. Take every ± and every slack of a mark on your bench as ${widen.toFixed(1)} times as wide, and look for what the misses below have in common: a butt’s angle not measured, a clamp that gives, a station from another datum.`;
  }
  if (agreed < counted) {
    return 'It has been wrong, no more often than its ± allows. Marks may be trusted within their slack; where a miss stands below, measure that blank again before thread.';
  }
  if (counted < 20) return 'It has not been wrong yet; with so few places that says little.';
  return 'It has not been wrong yet: marks may be trusted within their slack.';
}

function inHundred(chance: number): string {
  return chance < 0.001 ? 'less than once in 1000' : `${(100 * chance).toFixed(1)} times in 100`;
}

function WrongTable({ wrong }: { wrong: ProofRecord['wrong'] }) {
  return (
    <Table
      label="Where it was wrong"
      caption="Where it was wrong"
      heads={['Build', 'Weight', 'Agreed', 'Largest miss, of what was allowed']}
      rows={wrong
        .slice(0, 20)
        .map((proof) => [
          { of: <Link href={`/builds/${proof.build}/load-test`}>{proof.title}</Link> },
          formatGrams(proof.hungKg, 1),
          `${proof.agreed} of ${proof.counted}`,
          `${proof.worst.toFixed(1)} times`,
        ])}
    />
  );
}

/** The other builds as the server has them, this one as it stands on the page. */
function useProofRecord(): { record?: ProofRecord; failure?: string } {
  const { id, document } = useBuild();
  const { answer, failure } = useAnswer(api.proofs, null);
  if (!answer) return { failure };
  const others = answer.builds.filter((build) => build.id !== id);
  const isDemo = document.cells.get('about/-/demo')?.value === true;
  const own = { id, title: 'this one', proofs: readProofs(document) };
  return { record: proofRecord(isDemo ? others : [...others, own]) };
}
