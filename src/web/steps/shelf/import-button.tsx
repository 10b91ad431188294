import { useRef, useState } from 'react';
import { Button, Dialog, FileTrigger, Heading, Modal } from 'react-aria-components';
import { useLocation } from 'wouter';
import type { Objection } from '../../../record/operation.ts';
import { WorkBars } from '../../parts/work-bars.tsx';
import { useSay } from '../../read/messages.tsx';
import { ApiError } from '../../store/api.ts';
import { api } from '../../store/open-document.ts';

interface Refused {
  file: string;
  message: string;
  findings: readonly Objection[];
}

/** Opens a build file; one that cannot be taken is refused with its reasons, and nothing is changed. */
export function ImportButton() {
  const [, navigate] = useLocation();
  const say = useSay();
  const [refused, setRefused] = useState<Refused>();
  const [busy, setBusy] = useState(false);
  const calledOff = useRef(false);
  const open = async (files: FileList | null) => {
    const file = files?.[0];
    if (!file) return;
    setBusy(true);
    calledOff.current = false;
    try {
      const { document, attachmentsMissing, notes } = await api.importFile(file);
      for (const note of notes) say(`${note}.`);
      if (attachmentsMissing.length > 0) say(missingWords(attachmentsMissing.length));
      navigate(`/builds/${document.id}/blank`);
    } catch (error) {
      if (calledOff.current && error instanceof ApiError && error.status === 409) return;
      const findings = error instanceof ApiError ? error.findings : [];
      setRefused({
        file: file.name,
        message: error instanceof Error ? error.message : String(error),
        findings,
      });
    } finally {
      setBusy(false);
    }
  };
  return (
    <>
      <FileTrigger acceptedFileTypes={['.json', 'application/json']} onSelect={open}>
        <Button className="button" isDisabled={busy}>
          Open a build file
        </Button>
      </FileTrigger>
      {busy && (
        <WorkBars
          kinds={['build in']}
          onCancel={() => {
            calledOff.current = true;
          }}
        />
      )}
      <Modal
        className="dialog"
        isDismissable
        isOpen={refused !== undefined}
        onOpenChange={() => setRefused(undefined)}
      >
        <Dialog role="alertdialog">
          <Heading slot="title">{refused?.file} was not opened</Heading>
          <p>{refused?.message}</p>
          <ul>
            {refused?.findings.slice(0, mostReasons).map(({ path, message }) => (
              <li key={path + message}>{message}</li>
            ))}
          </ul>
          <p className="quiet">Nothing on the shelf was changed.</p>
          <Button slot="close" className="button button-main" autoFocus>
            Very well
          </Button>
        </Dialog>
      </Modal>
    </>
  );
}

/** More reasons than these would not be read. */
const mostReasons = 8;

function missingWords(count: number): string {
  return `The file names ${count} ${count === 1 ? 'picture' : 'pictures'} it does not hold; the build is complete otherwise.`;
}
