import { useMemo } from 'react';
import { type FerruleZone, keepOutZones } from '../../engine/bench/ferrule-zones.ts';
import type { Choices } from '../../engine/flow/choices.ts';
import { listMarks, type MarksList } from '../../engine/sheets/marks-list.ts';
import { useBench } from '../read/bench.tsx';

export interface ChosenMarks {
  list: MarksList;
  zones: FerruleZone[];
}

/** The chosen layout as it is marked; undefined until every guide has a mark. */
export function useMarks(): ChosenMarks | undefined {
  const { blank, choices } = useBench();
  return useMemo(() => {
    if (!blank || !choices || choices.guides.length === 0) return undefined;
    const guides = choices.guides.flatMap((guide) =>
      guide.stationM === undefined ? [] : [{ name: guideName(guide), fromTipM: guide.stationM }],
    );
    if (guides.length < choices.guides.length) return undefined;
    return {
      list: listMarks(blank, guides, choices.tapeStep),
      zones: keepOutZones(blank, choices.ferruleClearM),
    };
  }, [blank, choices]);
}

/** `snake 1/0`, `stripping 12 mm`. */
function guideName({ kind, size }: Choices['guides'][number]): string {
  return `${kind} ${size}`.trim();
}
