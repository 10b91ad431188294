import { useState } from 'react';
import { Button, Checkbox, Input, Label, SearchField } from 'react-aria-components';
import { useLocation } from 'wouter';
import { Page } from '../../parts/sheet/page.tsx';
import { useAttempt } from '../../read/use-attempt.ts';
import { api } from '../../store/open-document.ts';
import { BuildCard } from './build-card.tsx';
import { DemoChooser } from './demo-chooser.tsx';
import { FirstStartCard } from './first-start.tsx';
import { ImportButton } from './import-button.tsx';
import { RecordLine } from './record-line.tsx';
import { RepairsPart } from './repairs-part.tsx';
import { type Builds, useBuilds } from './use-builds.ts';
import { useFirstStart } from './use-first-start.ts';
import { Welcome } from './welcome.tsx';
import './shelf.css';

/** All builds of the shop, the latest first. */
export function ShelfPage() {
  const [search, setSearch] = useState('');
  const [gone, setGone] = useState(false);
  const { builds, refresh, more } = useBuilds(search, gone);
  const repairs = useBuilds(search, gone, 'ticket').builds;
  const demo = search === '' && !gone ? onlyDemo(builds) : undefined;
  const first = useFirstStart();
  const isNew = demo !== undefined || (builds.kind === 'found' && search === '' && builds.list.total === 0);
  const asked = isNew ? first : undefined;
  const leave = () => asked?.keep();
  return (
    <Page
      title="Shelf"
      aside="every build and repair of this shop"
      beside={<ShelfTools leave={leave} waits={first !== undefined && builds.kind === 'looking'} />}
    >
      {asked && <FirstStartCard {...asked} />}
      {demo && <Welcome demoId={demo.id} leave={leave} />}
      <div className="shelf-search">
        <SearchField className="field" value={search} onChange={setSearch}>
          <Label className="field-label">Find by title, customer, line, blank, note or tag</Label>
          <Input className="field-input" />
        </SearchField>
        <Checkbox className="flag" isSelected={gone} onChange={setGone}>
          <span className="flag-box" aria-hidden="true" />
          <span>Archived</span>
        </Checkbox>
      </div>
      <RepairsPart repairs={repairs} find={setSearch} />
      <ShelfList builds={builds} search={search} refresh={refresh} more={more} find={setSearch} />
      <DemoChooser />
      <RecordLine changed={refresh} />
    </Page>
  );
}

/** The demo, where nothing else was ever begun. */
function onlyDemo(builds: Builds) {
  const documents = builds.kind === 'found' ? builds.list.documents : [];
  return documents.length === 1 && documents[0].demo ? documents[0] : undefined;
}

interface ShelfToolsProps {
  leave(): void;
  /** Until it is known whether the shop is new, and so what to keep on leaving. */
  waits: boolean;
}

function ShelfTools({ leave, waits }: ShelfToolsProps) {
  const [, navigate] = useLocation();
  const { attempt } = useAttempt();
  const begin = () => {
    leave();
    void attempt('No build was begun', async () => navigate(`/builds/${(await api.createBuild()).id}/blank`));
  };
  const takeIn = () => {
    leave();
    void attempt('No repair was begun', async () => navigate(`/repairs/${(await api.createTicket()).id}`));
  };
  return (
    <div className="shelf-tools screen-only">
      <Button className="button button-main" isDisabled={waits} onPress={begin}>
        New build
      </Button>
      <Button className="button" isDisabled={waits} onPress={takeIn}>
        New repair
      </Button>
      <ImportButton />
    </div>
  );
}

interface ShelfListProps {
  builds: Builds;
  search: string;
  refresh(): void;
  more(): void;
  find(text: string): void;
}

function ShelfList({ builds, search, refresh, more, find }: ShelfListProps) {
  if (builds.kind === 'looking') return <p className="aside">Looking along the shelf …</p>;
  if (builds.kind === 'failed') {
    return (
      <p role="alert" className="attention">
        {builds.reason}.{' '}
        <Button className="inline" onPress={refresh}>
          Look again
        </Button>
      </p>
    );
  }
  const { documents, total } = builds.list;
  if (documents.length === 0) {
    return (
      <p>
        {search
          ? `No build has “${search}” in its title, customer, line, blank, note or tags.`
          : 'The shelf is empty: begin a new build, or open a build file.'}
      </p>
    );
  }
  return (
    <>
      <ul className="shelf">
        {documents.map((summary) => (
          <BuildCard key={summary.id} summary={summary} changed={refresh} find={find} />
        ))}
      </ul>
      {total > documents.length && (
        <p className="aside">
          {documents.length} of {total} shown.{' '}
          <Button className="inline" onPress={more}>
            Show more
          </Button>
        </p>
      )}
    </>
  );
}
