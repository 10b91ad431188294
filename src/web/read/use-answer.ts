import { useEffect, useState } from 'react';
import { reasonOf } from './open-store.ts';

interface Answered<Answer> {
  answer?: Answer;
  failure?: string;
}

/**
 * What the server answers to a question, asked anew when the question changes; nothing is asked while it is undefined.
 * `ask` stays the same from one drawing to the next. What comes too late for its question is dropped.
 */
export function useAnswer<Question extends string | null, Answer>(
  ask: (question: Question) => Promise<Answer>,
  question: Question | undefined,
  restMs = 0,
): Answered<Answer> {
  const [got, setGot] = useState<Answered<Answer> & { of: Question }>();
  useEffect(() => {
    if (question === undefined) return;
    let late = false;
    const put = (answered: Answered<Answer>) => !late && setGot({ of: question, ...answered });
    const timer = setTimeout(
      () =>
        ask(question).then(
          (answer) => put({ answer }),
          (error: unknown) => put({ failure: reasonOf(error) }),
        ),
      restMs,
    );
    return () => {
      late = true;
      clearTimeout(timer);
    };
  }, [ask, question, restMs]);
  return got !== undefined && got.of === question ? got : {};
}
