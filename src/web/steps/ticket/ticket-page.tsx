import { Link } from 'wouter';
import { shortNumber } from '../../../record/short-number.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { HistorySheet } from '../../parts/history/history-sheet.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { OpeningPage } from '../../parts/sheet/opening-page.tsx';
import { Page } from '../../parts/sheet/page.tsx';
import { SaveBanner, savedInBrief } from '../../parts/sheet/save-line.tsx';
import { UndoButtons } from '../../parts/sheet/undo-buttons.tsx';
import { BuildContext, useBuild } from '../../read/build-context.ts';
import { useDocumentOf } from '../../read/document-of.ts';
import { useOpenStore } from '../../read/open-store.ts';
import { textOf } from '../../read/values.ts';
import type { DocumentStore } from '../../store/document-store.ts';
import { CameInPart } from './came-in-part.tsx';
import { DamagePart } from './damage-part.tsx';
import { DonePart } from './done-part.tsx';
import { PicturesPart } from './pictures-part.tsx';
import { PricePart } from './price-part.tsx';
import './ticket.css';

/** A repair on one sheet, filled in while the customer stands at the counter. */
export function TicketPage({ id }: { id: string }) {
  const opening = useOpenStore(id);
  if (opening.kind === 'open') return <OpenTicket store={opening.store} />;
  return <OpeningPage what="repair" opening={opening} />;
}

function OpenTicket({ store }: { store: DocumentStore }) {
  const ticket = useDocumentOf(store);
  return (
    <BuildContext value={ticket}>
      <Page
        title={ticket.title}
        aside={ticket.subtitle === '' ? 'repair' : `repair · ${ticket.subtitle}`}
        beside={
          <div className="sheet-beside screen-only">
            <UndoButtons />
          </div>
        }
        foot={<TicketFoot />}
      >
        <SaveBanner />
        <BuildFields>
          <WhatNext />
          <CameInPart />
          <PicturesPart />
          <DamagePart />
          <PricePart />
          <DonePart />
        </BuildFields>
        <details>
          <summary>History of this repair</summary>
          <HistorySheet />
        </details>
      </Page>
    </BuildContext>
  );
}

function WhatNext() {
  const { single } = useBuild();
  const [about, job] = [single('about'), single('job')];
  const words = textOf(job, 'handedOverAt')
    ? 'Handed over; nothing is left to do.'
    : textOf(job, 'doneAt')
      ? 'Done: tell the customer, and note the day it is handed over.'
      : !textOf(about, 'title')
        ? 'What came in? One line that anybody in the shop would know the rod by.'
        : !textOf(job, 'broken')
          ? 'What is broken?'
          : job.fields.price === undefined
            ? 'Name a price, and a day it is promised for.'
            : 'Tie the label on, and put it in its place.';
  return <NextLine>{words}</NextLine>;
}

function TicketFoot() {
  const { id, title, save } = useBuild();
  return (
    <dl className="title-block">
      <div className="title-cell title-cell-wide">
        <dt>Repair</dt>
        <dd>{title}</dd>
      </div>
      <div className="title-cell">
        <dt>Number</dt>
        <dd>{shortNumber(id)}</dd>
      </div>
      <div className="title-cell title-cell-wide">
        <dt>Kept</dt>
        <dd>{savedInBrief(save)}</dd>
      </div>
      <div className="title-cell title-cell-wide screen-only">
        <dt>Fairbend</dt>
        <dd>
          <Link href="/">Shelf</Link> <Link href="/settings">Settings</Link>
        </dd>
      </div>
    </dl>
  );
}
