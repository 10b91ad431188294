import { useEffect, useMemo, useState } from 'react';
import { measuredInFull } from '../../engine/series/spared-readings.ts';
import { type BenchFit, benchFit } from '../../engine/stiffness/from-bench.ts';
import { readBuild } from '../../record/read-build.ts';
import { api } from '../store/open-document.ts';
import type { SeriesAnswer, SeriesTask } from '../worker/doubt-messages.ts';
import { doubtLane } from '../worker/engine-worker.ts';
import { useLongTask } from '../worker/use-long-task.ts';
import { useBuild } from './build-context.ts';
import { flagOf, textOf } from './values.ts';

export interface SeriesReading {
  /** What the builder calls it; undefined where he named none. */
  name: string | undefined;
  /** The builder's word: read together with the others. */
  wanted: boolean;
  /** Other blanks of the name, measured or not; undefined until they were looked up. */
  others: number | undefined;
  /** More of the name, older ones, which are not looked at here. */
  passedOver: number;
  /** Of these, those of its length that were measured in full: they spare this one readings. */
  inFull: number;
  answer: SeriesAnswer | undefined;
  working: boolean;
  failure: string | undefined;
}

/**
 * More are not looked at: the latest say what there is to say, and twelve with twenty readings each are learnt from in
 * under a second of this page's own background worker. All of a large series are compared by a job in Settings.
 */
export const mostBlanks = 12;

/** The other blanks of this one's series, learnt from as soon as the builder wants them heard. */
export function useSeries(fit: BenchFit | undefined, lengthM: number | undefined): SeriesReading {
  const { id, single } = useBuild();
  const blank = single('blank');
  const name = textOf(blank, 'series');
  const wanted = flagOf(blank, 'withSeries');
  const { blanks, passedOver, failure } = useOthers(id, wanted ? name : undefined);
  const request = fit && fit.request.setups.length > 0 ? fit.request : undefined;
  const task = useMemo<SeriesTask | undefined>(
    () =>
      wanted && request && blanks && blanks.length > 0 ? { does: 'series', blanks, request } : undefined,
    [wanted, request, blanks],
  );
  const found = useLongTask(task, doubtLane);
  const inFull = useMemo(
    () =>
      blanks && lengthM !== undefined
        ? measuredInFull(
            blanks.map((one) => one.request),
            lengthM,
          )
        : 0,
    [blanks, lengthM],
  );
  return useMemo(
    () => ({
      name,
      wanted,
      others: blanks?.length,
      passedOver,
      inFull,
      answer: task && found.answer,
      working: found.working,
      failure: failure ?? found.failure,
    }),
    [name, wanted, blanks, passedOver, inFull, task, found.answer, found.working, found.failure, failure],
  );
}

function useOthers(own: string, series: string | undefined) {
  const [found, setFound] = useState<Partial<Others> & { of: string; failure?: string }>();
  useEffect(() => {
    if (series === undefined) return;
    let late = false;
    lookUp(own, series).then(
      (others) => !late && setFound({ of: series, ...others }),
      (error: Error) => !late && setFound({ of: series, failure: error.message }),
    );
    return () => {
      late = true;
    };
  }, [own, series]);
  const stands = series !== undefined && found?.of === series ? found : undefined;
  return { blanks: stands?.blanks, passedOver: stands?.passedOver ?? 0, failure: stands?.failure };
}

interface Others {
  blanks: SeriesTask['blanks'];
  passedOver: number;
}

async function lookUp(own: string, series: string): Promise<Others> {
  const { documents, total } = await api.listDocuments({ series, limit: mostBlanks + 1 });
  const others = documents.filter(({ id }) => id !== own).slice(0, mostBlanks);
  const read = others.map(async ({ id, title }) => {
    const { cells, clock } = await api.document(id);
    const { bench, findings } = readBuild({ id, kind: 'build', cells: new Map(cells), clock });
    if (
      !bench ||
      findings.some(({ severity, path }) => severity === 'stop' && !/^(layout|guides)/.test(path))
    )
      return [];
    const { request } = benchFit(bench);
    return request.setups.length > 0 ? [{ id, name: title || 'Untitled build', request }] : [];
  });
  const ofName = total - (documents.length - others.length);
  return {
    blanks: (await Promise.all(read)).flat(),
    passedOver: Math.max(0, ofName - others.length),
  };
}
