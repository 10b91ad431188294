import { useEffect, useState } from 'react';
import { Button, Checkbox } from 'react-aria-components';
import type { SharedSession, SharingAnswer } from '../../../record/sharing-api.ts';
import { instantWords } from '../../../words/intl.ts';
import { QrCode } from '../../parts/qr-code.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useSay } from '../../read/messages.tsx';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';

/** Which other devices may use this shop: pairing one more, shutting one out. */
export function SharingPart() {
  const say = useSay();
  const [sharing, setSharing] = useState<SharingAnswer>();
  const [code, setCode] = useState<string>();
  const { busy, attempt } = useAttempt();
  useEffect(() => {
    // A paired device may not ask; it is told nothing then.
    api.sharing().then(setSharing, () => undefined);
  }, []);
  if (!sharing) return null;
  const letIn = (open: boolean) => {
    setCode(undefined);
    void attempt(open ? 'No phones are let in' : 'Phones are still let in', async () =>
      setSharing(await api.letPhonesIn(open)),
    );
  };
  const makeCode = () => attempt('No code was made', async () => setCode((await api.makePairingCode()).code));
  const end = ({ id, name }: SharedSession) =>
    attempt(`${name} is not shut out`, async () => {
      const { sessions } = await api.endSession(id);
      setSharing({ ...sharing, sessions });
      say(`${name} is shut out.`);
    });
  return (
    <Part
      title="Phones and tablets"
      tools={
        sharing.shared && (
          <Button className="button" onPress={makeCode}>
            Pair a device
          </Button>
        )
      }
    >
      {sharing.switchable ? (
        <Checkbox className="flag" isSelected={sharing.shared} isDisabled={busy} onChange={letIn}>
          <span className="flag-box" aria-hidden="true" />
          <span>Let phones and tablets of this network in, each paired by a code</span>
        </Checkbox>
      ) : (
        <p className="quiet">Phones are let in by how Fairbend was started.</p>
      )}
      {code && <CodeShown code={code} addresses={sharing.addresses} />}
      {sharing.sessions.length > 0 && (
        <ul>
          {sharing.sessions.map((session) => (
            <li key={session.id}>
              {session.name} <span className="quiet">paired {instantWords(session.pairedAt)}</span>{' '}
              <Button className="plain" onPress={() => end(session)}>
                Shut out<span className="visually-hidden"> {session.name}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
      {sharing.fingerprint && <FingerprintShown fingerprint={sharing.fingerprint} />}
      {sharing.shared && !sharing.fingerprint && (
        <p className="quiet">
          What passes over the network is not encrypted unless a proxy does so; pair only in a network you
          trust.
        </p>
      )}
    </Part>
  );
}

/** Nobody vouches for the shop's own certificate but these letters, compared by eye. */
function FingerprintShown({ fingerprint }: { fingerprint: string }) {
  return (
    <p>
      What passes over the network is encrypted. A new phone warns that nobody vouches for this shop: let it
      show the certificate, and go on only where its SHA-256 fingerprint is{' '}
      <strong style={{ overflowWrap: 'anywhere' }}>{fingerprint}</strong>
    </p>
  );
}

function CodeShown({ code, addresses }: { code: string; addresses: readonly string[] }) {
  const [first] = addresses;
  return (
    <div role="status">
      <p>
        Code <strong>{code}</strong>, for ten minutes and one device
        {first
          ? ` at ${addresses.map((address) => `${address}/pair`).join(' or ')}.`
          : '; but no other computer reaches this one.'}
      </p>
      {first && <QrCode text={`${first}/pair#${code}`} />}
    </div>
  );
}
