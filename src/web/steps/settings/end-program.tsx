import { useState } from 'react';
import { Button } from 'react-aria-components';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';

/** Ends the program from its page, for those who started it with a double click. */
export function EndProgram() {
  const { attempt } = useAttempt();
  const [ended, setEnded] = useState(false);
  const end = () =>
    attempt('Fairbend goes on', async () => {
      await api.end();
      setEnded(true);
    });
  if (ended) return <p role="status">Fairbend has ended; everything is saved. You may close this page.</p>;
  return (
    <>
      <p>
        <Button className="button" onPress={() => void end()}>
          End Fairbend
        </Button>
      </p>
      <p className="quiet">Every device of the shop stops with it. Start it again as you started it today.</p>
    </>
  );
}
