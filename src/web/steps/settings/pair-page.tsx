import { type FormEvent, useEffect, useState } from 'react';
import { Button, Form, Input, Label, TextField } from 'react-aria-components';
import { Page } from '../../parts/sheet/page.tsx';
import { reasonOf } from '../../read/open-store.ts';
import { api } from '../../store/open-document.ts';

/** Where a phone or tablet is let in; the QR code brings its code behind the '#'. */
export function PairPage() {
  const [{ code: brought, next }] = useState(() => invitationOf(location.hash));
  const [code, setCode] = useState(brought);
  const [name, setName] = useState('');
  const [refusal, setRefusal] = useState<string>();
  useEffect(() => {
    // A device that is paired already goes on at once and leaves the code to another.
    if (next)
      api.info().then(
        () => location.replace(next),
        () => undefined,
      );
  }, [next]);
  const pair = (event: FormEvent) => {
    event.preventDefault();
    api.pair(code, name).then(
      // Anew, so that nothing of the unpaired page remains.
      () => location.replace(next ?? '/'),
      (error: unknown) => setRefusal(reasonOf(error)),
    );
  };
  return (
    <Page title="Pair this device" aside="once, then for thirty days">
      <Form className="fields-row" onSubmit={pair}>
        <TextField className="field" value={code} onChange={setCode} isRequired>
          <Label className="field-label">Code shown on the shop’s computer</Label>
          <Input className="field-input" autoComplete="off" autoCapitalize="characters" />
        </TextField>
        <TextField className="field" value={name} onChange={setName} maxLength={60}>
          <Label className="field-label">Name for this device</Label>
          <Input className="field-input" placeholder="Bench tablet" autoComplete="off" />
        </TextField>
        <Button className="button button-main" type="submit">
          Pair
        </Button>
      </Form>
      {refusal && (
        <p role="alert" className="attention">
          {refusal}.
        </p>
      )}
      <p className="quiet">
        The code is in Settings on the shop’s computer, under “Phones and tablets”; it holds for ten minutes
        and one device.
      </p>
    </Page>
  );
}

/** What a scanned address carries behind its '#': a code, and the page of this server to go on to. */
function invitationOf(hash: string): { code: string; next: string | undefined } {
  const [, code = '', next] = /^#([^/]{0,20})(\/(?:photo|stand)\/[\w-]+\/[\w-]+)?$/.exec(hash) ?? [];
  return { code, next };
}
