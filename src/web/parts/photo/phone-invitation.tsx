import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { reasonOf } from '../../read/open-store.ts';
import { useAnswer } from '../../read/use-answer.ts';
import { api } from '../../store/open-document.ts';
import { QrCode } from '../qr-code.tsx';

/** The way from the telephone to a page of this build: a code to scan. A paired device asks for none. */
export function PhoneInvitation({ path }: { path: string }) {
  // A paired device may not ask; it has its own camera.
  const { answer: sharing } = useAnswer(api.sharing, null);
  const [code, setCode] = useState<string>();
  const [trouble, setTrouble] = useState<string>();
  if (!sharing) return null;
  const [address] = sharing.addresses;
  if (!sharing.shared || !address) {
    return (
      <p className="small quiet">
        To take it with the phone, let phones in: <Link href="/settings">Settings</Link>, Phones and tablets.
        Or bring the picture over as you always do.
      </p>
    );
  }
  const show = () =>
    api.makePairingCode().then(
      (made) => setCode(made.code),
      (error: unknown) => setTrouble(`No code was made: ${reasonOf(error)}.`),
    );
  return (
    <div className="photo-bar">
      {!code && (
        <Button className="button" onPress={show}>
          Take it with the telephone
        </Button>
      )}
      {code && (
        <div className="photo-qr" role="status">
          <QrCode text={`${address}/pair#${code}${path}`} />
          <p>
            Scan this with the telephone in the same network: it opens the page to take the picture, and what
            it sends appears here at once. By hand: {address}/pair, code <strong>{code}</strong>, for ten
            minutes and one device; a telephone that is paired already needs no code.
          </p>
        </div>
      )}
      {trouble && <p className="attention">{trouble}</p>}
    </div>
  );
}
