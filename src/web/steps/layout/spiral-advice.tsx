import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import { spiralQuestion } from '../../../engine/flow/round-questions.ts';
import { spiralInWords } from '../../../words/round.ts';
import { keptTurn } from '../../../words/tape.ts';
import { Figure } from '../../fields/figure.tsx';
import { useBuild } from '../../read/build-context.ts';
import { laidBuild } from '../../read/sheet-model.ts';
import { besideLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import type { OneSideProps } from './hands-table.tsx';

/** Angles that turn the line less, clear the blank and ask less of the hand; one press takes them. */
export function SpiralAdvice({ model, writer, waits }: OneSideProps) {
  const { write } = useBuild();
  const task = useMemo(() => {
    if (waits || model.unreadable || model.loads.ladder.length === 0) return undefined;
    const question = spiralQuestion(laidBuild(model));
    return question && { does: 'spiral' as const, question };
  }, [waits, model]);
  const { answer, working } = useLongTask(task, besideLane);
  if (!answer) return null;
  const { deed, why, better } = spiralInWords(answer, writer);
  const take = () =>
    write(
      'turnSpiral',
      model.choices.guides.flatMap(({ id }, i) => {
        const at = answer.best.fromTopRad[i];
        if (id === undefined || Math.abs(at - answer.now.fromTopRad[i]) < 1e-6) return [];
        return [{ path: ['guides', id, 'around'] as const, value: keptTurn(at) }];
      }),
    );
  return (
    <div className={working ? 'quiet' : undefined}>
      <p>
        {better ? <strong>{deed}</strong> : deed} <Figure text={why} />
      </p>
      {better && (
        <Button className="button" isDisabled={working} onPress={take}>
          Use these angles
        </Button>
      )}
    </div>
  );
}
