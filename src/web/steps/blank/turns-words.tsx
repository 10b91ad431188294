import type { TurnedReading, TurnedSection } from '../../../engine/rotation/turned-section.ts';
import { bowInWords, stiffnessInWords } from '../../../words/turning.ts';
import { Findings } from '../../parts/sheet/findings.tsx';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';

/** What the turns say, or what is still missing; without a word on which side to choose. */
export function TurnsWords({ section, reading }: { section: TurnedSection; reading: TurnedReading }) {
  const sentence = useSentence();
  const { writer } = useShop();
  const { answer, findings, read, rows } = reading;
  const solved = answer && answer.status !== 'refused' ? answer : undefined;
  return (
    <div role="status">
      {solved ? (
        <>
          <p className="turns-verdict">{bowInWords(solved, section.held, writer)}</p>
          <p className="turns-verdict">{stiffnessInWords(solved)}</p>
          <p className="quiet small">
            From {read} of {rows} steps. Your readings agree within {writer.calliper(solved.residualRmsM)}.
          </p>
        </>
      ) : (
        findings.length === 0 && (
          <p className="quiet">
            {read} of {rows} steps read under both loads. Four or more tell bow and stiffness apart.
          </p>
        )
      )}
      {solved?.reason && <p className="attention">▲ {sentence(solved.reason)}</p>}
      <Findings findings={findings} />
    </div>
  );
}
