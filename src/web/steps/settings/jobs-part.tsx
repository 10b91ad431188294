import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import type { LearntSeries } from '../../../engine/series/learn-series.ts';
import type { JobStatus } from '../../../record/record-api.ts';
import { instantWords } from '../../../words/intl.ts';
import { LearntTable } from '../../parts/learnt-table.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useAnswer } from '../../read/use-answer.ts';
import { api } from '../../store/open-document.ts';
import { type ShelfRow, ShelfTable } from './shelf-table.tsx';
import { isOpen, type Jobs, useJobs, useResult } from './use-jobs.ts';
import '../../parts/work-bars.css';
import './jobs.css';

/** Long computations over the whole shop: begun, watched, called off, and what came out of the last one. */
export function JobsPart() {
  const jobs = useJobs();
  return (
    <Part
      folded
      title="Worked through in the background"
      anchor="jobs"
      aside="goes on while you work and when this page is closed"
    >
      {jobs.trouble && (
        <p role="alert" className="attention">
          {jobs.trouble}.
        </p>
      )}
      <ShelfJob jobs={jobs} />
      <SeriesJob jobs={jobs} />
    </Part>
  );
}

const shelf = 'sample shelf';
const series = 'learn series';

function ShelfJob({ jobs }: { jobs: Jobs }) {
  const own = (jobs.list ?? []).filter(({ kind }) => kind === shelf);
  const done = useResult<ShelfRow[]>(own);
  return (
    <section className="job">
      <h3>How sure every build is</h3>
      <p>
        The marks proposed for each build are read again on a hundred blanks that fit its readings: seconds to
        a minute a build.
      </p>
      <p>
        <Button
          className="button"
          isDisabled={!jobs.list || own.some(isOpen)}
          onPress={() => void jobs.start(shelf)}
        >
          Work through the shelf
        </Button>
      </p>
      <JobState job={own[0]} what="the shelf" cancel={jobs.cancel} />
      {done && <Came job={done.job} />}
      {done && <ShelfTable rows={done.result} />}
    </section>
  );
}

function SeriesJob({ jobs }: { jobs: Jobs }) {
  const id = useId();
  const [name, setName] = useState('');
  const names = useSeriesNames();
  const own = (jobs.list ?? []).filter(({ kind }) => kind === series);
  const done = useResult<LearntSeries>(own);
  const wanted = name.trim();
  return (
    <section className="job">
      <h3>How alike the blanks of a series are</h3>
      <p>All measured blanks that carry the name of one series, held side by side.</p>
      <form
        className="job-ask"
        onSubmit={(event) => {
          event.preventDefault();
          if (wanted !== '') void jobs.start(series, { series: wanted });
        }}
      >
        <div className="field">
          <label htmlFor={id} className="field-label">
            Name of the series
          </label>
          <input
            id={id}
            className="field-input"
            list={`${id}-names`}
            maxLength={120}
            value={name}
            onChange={(event) => setName(event.target.value)}
          />
          <datalist id={`${id}-names`}>
            {names.map((one) => (
              <option key={one} value={one} />
            ))}
          </datalist>
        </div>
        <Button className="button" type="submit" isDisabled={!jobs.list || wanted === '' || own.some(isOpen)}>
          Compare its blanks
        </Button>
      </form>
      <JobState job={own[0]} what={`the series “${own[0]?.subject}”`} cancel={jobs.cancel} />
      {done && <Came job={done.job} />}
      {done && <LearntTable learnt={done.result} />}
    </section>
  );
}

interface JobStateProps {
  /** The newest of its kind. */
  job: JobStatus | undefined;
  what: string;
  cancel(id: string): Promise<void>;
}

function JobState({ job, what, cancel }: JobStateProps) {
  if (!job || job.state === 'done') return <div role="status" />;
  return (
    <div className="job-state">
      {isOpen(job) && (
        <progress
          aria-label={`How far ${what} is`}
          value={job.total > 0 ? job.done : undefined}
          max={job.total > 0 ? job.total : undefined}
        />
      )}
      <p role="status" className={job.state === 'failed' ? 'attention' : 'quiet'}>
        {stateWords(job, what)}
      </p>
      {isOpen(job) && (
        <Button className="button" onPress={() => void cancel(job.id)}>
          Call it off<span className="visually-hidden">: {what}</span>
        </Button>
      )}
    </div>
  );
}

function stateWords({ state, done, total, message }: JobStatus, what: string): string {
  if (state === 'waiting') return `Waits for its turn: ${what}.`;
  if (state === 'failed') return `No result for ${what}: ${message}.`;
  if (state === 'cancelled') return `Called off: ${what}.`;
  if (total === 0) return `Begins with ${what} …`;
  return `${done} of ${total} done${message ? `; now ${message}` : ''}`;
}

function Came({ job }: { job: JobStatus }) {
  const of = job.subject ? `Series “${job.subject}”, as` : 'As';
  return (
    <p className="quiet">
      {of} it stood on {instantWords(job.createdAt)}; what was changed since is not in it.
    </p>
  );
}

/** As the builders wrote them, of the latest builds. */
function useSeriesNames(): string[] {
  const { documents = [] } = useAnswer(latestBuilds, null).answer ?? {};
  return [...new Set(documents.flatMap(({ card }) => card.series ?? []))].sort();
}
const latestBuilds = () => api.listDocuments({ kind: 'build', limit: 200 });
