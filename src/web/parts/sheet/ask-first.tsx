import { type ReactNode, useState } from 'react';
import { Button } from 'react-aria-components';

interface AskFirstProps {
  /** On the button that asks. */
  ask: ReactNode;
  /** What will be lost, said before it is done. */
  children: ReactNode;
  /** On the button that does it. */
  deed: string;
  busy?: boolean;
  carryOut(): Promise<unknown>;
}

/** What cannot be taken back is said, and pressed twice. */
export function AskFirst({ ask, children, deed, busy = false, carryOut }: AskFirstProps) {
  const [asked, setAsked] = useState(false);
  if (!asked)
    return (
      <Button className="plain screen-only" isDisabled={busy} onPress={() => setAsked(true)}>
        {ask}
      </Button>
    );
  return (
    <p role="alert">
      {children}{' '}
      <Button
        className="button"
        isDisabled={busy}
        onPress={() => void carryOut().then(() => setAsked(false))}
      >
        {deed}
      </Button>{' '}
      <Button className="plain" isDisabled={busy} onPress={() => setAsked(false)}>
        Leave it
      </Button>
    </p>
  );
}
