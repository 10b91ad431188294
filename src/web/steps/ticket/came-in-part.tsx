import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import type { DocumentSummary } from '../../../record/api.ts';
import { Field } from '../../fields/field.tsx';
import { TagsField } from '../../fields/tags-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useAnswer } from '../../read/use-answer.ts';
import { textOf } from '../../read/values.ts';
import { api } from '../../store/open-document.ts';

/** Which rod, whose, and what is wrong with it. */
export function CameInPart() {
  const { rows, newRowId, write } = useBuild();
  return (
    <Part title="What came in">
      <div className="fields-row">
        <Field path={['about', '-', 'title']} />
        <Field path={['about', '-', 'customer']} />
        <Field path={['about', '-', 'contact']} />
        <Field path={['job', '-', 'broken']} />
      </div>
      <Field path={['job', '-', 'words']} />
      <BuildOnRecord />
      <details>
        <summary>Tags</summary>
        <TagsField rows={rows('tags')} newRowId={newRowId} write={write} />
      </details>
    </Part>
  );
}

/** The build that it is, found on the shelf; a repair stands without one too. */
function BuildOnRecord() {
  const { single, write } = useBuild();
  const id = textOf(single('about'), 'build');
  const [search, setSearch] = useState('');
  const found = useFound(search);
  const chosen = useChosen(id);
  const choose = (build: DocumentSummary) => {
    const about = single('about');
    const fill = (field: string, value: string) =>
      value !== '' && textOf(about, field) === undefined
        ? [{ path: ['about', '-', field] as const, value }]
        : [];
    write('joinBuild', [
      { path: ['about', '-', 'build'], value: build.id },
      ...fill('title', build.title),
      ...fill('customer', build.customer),
      ...fill('lineWeight', build.lineWeight),
    ]);
    setSearch('');
  };
  if (id !== undefined) {
    return (
      <p>
        On record as <Link href={`/builds/${id}/blank`}>{chosen ?? 'a build'}</Link>.{' '}
        <Button
          className="inline"
          onPress={() => write('joinBuild', [{ path: ['about', '-', 'build'], value: null }])}
        >
          It is another
        </Button>
      </p>
    );
  }
  return (
    <div className="field ticket-record">
      <label className="field-label" htmlFor="ticket-record">
        Built here? Find it on the shelf
      </label>
      <input
        id="ticket-record"
        className="field-input"
        type="search"
        value={search}
        placeholder="title, customer, tag"
        onChange={(event) => setSearch(event.target.value)}
      />
      {found && (
        <ul className="ticket-found">
          {found.map((build) => (
            <li key={build.id}>
              <Button className="plain" onPress={() => choose(build)}>
                {[build.title || 'Untitled build', build.customer].filter(Boolean).join(' · ')}
              </Button>
            </li>
          ))}
          {found.length === 0 && (
            <li className="quiet">Nothing on the shelf is like that. Continue without one.</li>
          )}
        </ul>
      )}
    </div>
  );
}

const mostFound = 6;

function useFound(search: string): readonly DocumentSummary[] | undefined {
  return useAnswer(buildsLike, search.trim() === '' ? undefined : search, 200).answer?.documents;
}
const buildsLike = (search: string) => api.listDocuments({ search, limit: mostFound });

function useChosen(id: string | undefined): string | undefined {
  const chosen = useAnswer(summaryOf, id).answer?.document;
  return chosen && (chosen.title || 'Untitled build');
}
const summaryOf = (id: string) => api.operationsAfter(id, 2 ** 31 - 1);
