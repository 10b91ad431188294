import { lazy, Suspense, useEffect, useState } from 'react';
import { Button, Dialog, Heading, Modal } from 'react-aria-components';
import { Redirect, Route, Switch } from 'wouter';
import { KeyPad } from '../fields/key-pad.tsx';
import { preload } from '../offline/preload.ts';
import { Page } from '../parts/sheet/page.tsx';
import { MessageProvider } from '../read/messages.tsx';
import { ShopProvider } from '../read/shop.tsx';
import { PairPage } from '../steps/settings/pair-page.tsx';
import { SettingsPage } from '../steps/settings/settings-page.tsx';
import { ShelfPage } from '../steps/shelf/shelf-page.tsx';
import { recordReplaced } from '../store/open-document.ts';
import './shell.css';

/** The shelf alone comes with the first page; a build's engine, drawings and forms follow, while it rests or asked. */
const loadBuildPage = async () => ({ default: (await import('./build-page.tsx')).BuildPage });
const loadTicketPage = async () => ({
  default: (await import('../steps/ticket/ticket-page.tsx')).TicketPage,
});
const BuildPage = lazy(loadBuildPage);
const TicketPage = lazy(loadTicketPage);
/** The telephone's pages; they come only where they are asked for. */
const PhonePage = lazy(async () => ({ default: (await import('../steps/phone/phone-page.tsx')).PhonePage }));
/** The live view, likewise. */
const LivePage = lazy(async () => ({ default: (await import('../steps/load-test/live-page.tsx')).LivePage }));

const StandPage = lazy(async () => ({ default: (await import('../steps/phone/stand-page.tsx')).StandPage }));

/** The whole page: what the shop sets holds everywhere, the address says which sheet is on the table. */
export function App() {
  return (
    <MessageProvider>
      <ReplacedNotice />
      <Switch>
        <Route path="/pair">
          <PairPage />
        </Route>
        <Route>
          <ShopSheets />
        </Route>
      </Switch>
    </MessageProvider>
  );
}

/** What needs the shop's own document, and so a device that is let in. */
function ShopSheets() {
  useEffect(() => void preload([loadBuildPage, loadTicketPage]), []);
  return (
    <ShopProvider>
      <KeyPad />
      <Suspense fallback={null}>
        <Switch>
          <Route path="/">
            <ShelfPage />
          </Route>
          <Route path="/settings">
            <SettingsPage />
          </Route>
          <Route path="/photo/:build/:test">
            {({ build, test }) => <PhonePage key={build} build={build} test={test} />}
          </Route>
          <Route path="/live/:build/:test">
            {({ build, test }) => <LivePage key={build} build={build} test={test} />}
          </Route>
          <Route path="/stand/:build/:stand">
            {({ build, stand }) => <StandPage key={build} build={build} stand={stand} />}
          </Route>
          <Route path="/builds/:id">{({ id }) => <Redirect to={`/builds/${id}/blank`} replace />}</Route>
          <Route path="/builds/:id/:step/:screen?">
            {({ id, step }) => <BuildPage key={id} id={id} step={step} />}
          </Route>
          <Route path="/repairs/:id">{({ id }) => <TicketPage key={id} id={id} />}</Route>
          <Route>
            <Page title="No such sheet">
              <p>
                Nothing is kept under this address. <a href="/">Back to the shelf</a>
              </p>
            </Page>
          </Route>
        </Switch>
      </Suspense>
    </ShopProvider>
  );
}

/** Over everything, once a backup or an imported shop stands in the place of what this page shows. Unsent edits are kept and sent after. */
function ReplacedNotice() {
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
