import { useEffect, useState } from 'react';
import { Button, Dialog, Heading, Modal } from 'react-aria-components';
import { recordReplaced } from '../store/open-document.ts';

/** Over everything, once a backup or an imported shop stands in the place of what this page shows. Unsent edits are kept and sent after. */
export function ReplacedNotice() {
  const [replaced, setReplaced] = useState(false);
  useEffect(() => {
    const heard = () => setReplaced(true);
    addEventListener(recordReplaced, heard);
    return () => removeEventListener(recordReplaced, heard);
  }, []);
  return (
    <Modal className="dialog" isOpen={replaced} isKeyboardDismissDisabled>
      <Dialog role="alertdialog">
        <Heading slot="title">This record was replaced by a backup</Heading>
        <p>
          A backup was restored, or a shop was imported. This page still shows the old record. Load it again.
        </p>
        <Button className="button button-main" autoFocus onPress={() => location.reload()}>
          Load again
        </Button>
      </Dialog>
    </Modal>
  );
}
