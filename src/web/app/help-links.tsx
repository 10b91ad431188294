import { useEffect, useState } from 'react';
import { Button, Dialog, Heading, Modal } from 'react-aria-components';
import { useRoute } from 'wouter';
import { keysOf } from '../../words/keys.ts';
import { howTo } from '../parts/sheet/how-to.ts';

/** The manual's page for what is done here, and the keys that work here; `?` opens them too. */
export function HelpLinks({ step }: { step: string }) {
  const [, params] = useRoute('/builds/:id/:step/:screen');
  const how = howTo(step, params?.screen);
  const [open, setOpen] = useState(false);
  useQuestionMark(() => setOpen(true));
  return (
    <>
      {how && (
        <a className="help-link" href={`/manual/${how.page}.html`} target="_blank" rel="noreferrer">
          How to {how.words}
        </a>
      )}
      <Button className="plain help-keys" aria-keyshortcuts="?" onPress={() => setOpen(true)}>
        Keys
      </Button>
      <Modal className="dialog" isDismissable isOpen={open} onOpenChange={setOpen}>
        <Dialog>
          <Heading slot="title">Keys</Heading>
          <dl className="key-list">
            {keysOf(step).map(({ keys, does }) => (
              <KeyLine key={keys + does} keys={keys} does={does} />
            ))}
          </dl>
          <Button slot="close" className="button button-main" autoFocus>
            Close
          </Button>
        </Dialog>
      </Modal>
    </>
  );
}

function KeyLine({ keys, does }: { keys: string; does: string }) {
  return (
    <>
      <dt>
        <kbd>{keys}</kbd>
      </dt>
      <dd>{does}</dd>
    </>
  );
}

/** Not while something is typed, where it is a letter like any other. */
function useQuestionMark(press: () => void): void {
  useEffect(() => {
    const listen = (event: KeyboardEvent) => {
      const typing = event.target instanceof HTMLElement && event.target.matches('input, textarea, select');
      if (event.key === '?' && !typing) press();
    };
    addEventListener('keydown', listen);
    return () => removeEventListener('keydown', listen);
  }, [press]);
}
