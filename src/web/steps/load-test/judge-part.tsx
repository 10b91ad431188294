import { useMemo, useState } from 'react';
import type { RodJudgement } from '../../../engine/load-test/rod-judgement.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { judgeQuestion } from '../../../record/judge-question.ts';
import {
  contradictedWords,
  gainInWords,
  moveInWords,
  offMarks,
  spiralInPhotoWords,
  withheldInWords,
} from '../../../words/judging.ts';
import { Figure } from '../../fields/figure.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBench } from '../../read/bench.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { doubtLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import { JudgeTable } from './judge-table.tsx';
import { TestChoice } from './test-choice.tsx';
import { type TracedTest, useTracedTests } from './use-photographed.ts';

/** The taped-up rod in its photograph: line angle and gap at every guide, and which guide to move, if any. */
export function JudgePart({ model }: { model: SheetModel }) {
  const tests = useTracedTests().filter(({ test }) => test.rod === 'taped' && test.hungKg !== undefined);
  const [picked, setPicked] = useState<string>();
  const shown = tests.find(({ test }) => test.id === picked) ?? tests[0];
  if (!shown) return null;
  return (
    <Part title="What the photograph says" aside="of the taped-up rod, beside what was predicted">
      {model.choices.spiral ? (
        <p className="attention">{spiralInPhotoWords}</p>
      ) : (
        <>
          <TestChoice tests={tests} shown={shown} onPick={setPicked} />
          <Judged key={shown.test.id} model={model} traced={shown} />
        </>
      )}
    </Part>
  );
}

function Judged({ model, traced: { test } }: { model: SheetModel; traced: TracedTest }) {
  const sentence = useSentence();
  const { fit } = useBench();
  const task = useMemo(() => {
    const { request, field, choices } = model;
    const parts = { request, choices, marksFromTipM: field.fromTipM };
    const question = fit && judgeQuestion(test, { fit: fit.request, ...parts });
    return question && { does: 'judge' as const, question };
  }, [model, test, fit]);
  const { answer, working, failure } = useLongTask(task, doubtLane);
  if (failure) return <p role="alert">This photograph could not be judged: {failure}.</p>;
  if (!answer) return <p className="quiet">Judging the photograph … some seconds.</p>;
  if (answer.status !== 'judged') {
    return (
      <p className="attention" role="alert">
        The photograph could not be judged. {answer.reason && sentence(answer.reason)}{' '}
        {answer.findings[0] && sentence(answer.findings[0])}
      </p>
    );
  }
  return (
    <div className={working ? 'judged quiet' : 'judged'}>
      <Verdict judged={answer} known={(fit?.request.setups.length ?? 0) > 0} />
      <JudgeTable judged={answer} hung={formatGrams(test.hungKg ?? 0, 0)} />
    </div>
  );
}

function Verdict({ judged, known }: { judged: RodJudgement; known: boolean }) {
  const sentence = useSentence();
  const { writer } = useShop();
  const { moves, withheld, contradicted, tipOffM } = judged;
  const off = offMarks(judged, writer);
  return (
    <>
      {contradicted && (
        <p className="attention">
          {contradictedWords} {judged.findings[0] && sentence(judged.findings[0])}
        </p>
      )}
      {off.map(({ guide, words }) => (
        <p key={guide} className="attention">
          <Figure text={words} />.
        </p>
      ))}
      {withheld && (
        <p className="attention" role="status">
          <Figure text={withheldInWords(withheld, writer)} />
        </p>
      )}
      {off.length > 0 && moves && (
        <p className="small quiet">
          What follows takes the guides where they are, not where their marks are.
        </p>
      )}
      {!moves && !withheld && <p className="attention">No move is proposed: not every load has an answer.</p>}
      {moves && moves.moves.length > 0 && (
        <>
          <p>
            <strong>
              {moves.moves.length === 1 ? 'Move one guide' : `Move ${moves.moves.length} guides`}
            </strong>
          </p>
          <ol className="judge-moves">
            {moves.moves.map((move) => (
              <li key={move.guide}>
                <Figure text={moveInWords(move, writer)} />
              </li>
            ))}
          </ol>
        </>
      )}
      {moves && (
        <p role="status">
          <Figure text={gainInWords(moves, writer)} />{' '}
          {moves.moves.length > 0 && 'Move, photograph again, compare.'}
        </p>
      )}
      {tipOffM && (
        <p className="small quiet">
          The tip hangs <Figure text={writer.length(Math.hypot(tipOffM.xM, tipOffM.yM))} /> from where the
          readings alone put it.
        </p>
      )}
      {!known && (
        <p className="small quiet">
          Nothing hung on the bare blank yet: there is no prediction to compare with.
        </p>
      )}
      <p className="small quiet">
        The ± comes from the traced curve and from taps on the rings. A line that rubs, and rings higher or
        lower than listed, are not in it. Tried on simulated photographs only.
      </p>
    </>
  );
}
