/** What each drawing of the Layout sheet is made from. */

import { criteriaIn } from '../../../engine/layout/criteria.ts';
import type { Zone } from '../../../engine/layout/guide-moves.ts';
import { criterionWords } from '../../../words/criteria.ts';
import { guideReadingInWords } from '../../../words/guide-reading.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare, placeInFull } from '../../../words/places.ts';
import { ringsAt } from '../../parts/drawing/attention.ts';
import type { BendView, DrawnRod } from '../../parts/drawing/bend-view.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { RulerModel } from './ruler-model.ts';
import type { SheetFrame } from './sheet-frame.ts';
import type { StripsModel } from './strips-drawing.ts';

export function bendView(frame: SheetFrame, rod: DrawnRod): BendView | undefined {
  const { ours } = frame;
  const loads = ours?.reading.loads;
  const drawn = loads?.[frame.drawn];
  if (!ours || !loads || !drawn || loads.length !== rod.loadNames.length) return undefined;
  return {
    rod,
    loads,
    drawn: frame.drawn,
    ringFromTipM: rod.reelSide === 'over' ? [0, ...ours.fromTipM] : undefined,
    rest: frame.beside.rest?.reading.loads[0],
    attention: ringsAt(drawn.worstAt),
    active: frame.active === undefined ? undefined : frame.active + 1,
    settled: !frame.dragging,
  };
}

export function rulerModel(
  model: SheetModel,
  slack: readonly Zone[] | undefined,
  writer: LadderWriter,
): RulerModel {
  const { blank, field } = model;
  return {
    lengthM: blank.lengthM,
    gripFromTipM: model.rod.lengthM,
    system: writer.units,
    diameters: model.diameters,
    ferrules: blank.joints.map(({ doubled }) => doubled),
    keepOut: model.keepOut,
    sections: blank.sections,
    pinned: field.pinned,
    slack: slack?.length === field.fromTipM.length ? slack : undefined,
    startFromTipM: model.startFromTipM,
    short: (lengthM) => bare(writer.length(lengthM)),
    describe: ({ fromTipM, ours }, guide) => {
      const place = placeInFull(blank, fromTipM, guide, writer);
      return ours ? `${place}. ${guideReadingInWords(ours.reading, guide, model.limits, writer)}` : place;
    },
  };
}

export function stripsModel({ blank, limits }: SheetModel, writer: LadderWriter): StripsModel {
  return {
    lengthM: blank.lengthM,
    limits,
    titles: Object.fromEntries(
      criteriaIn(limits).map(({ id, quantity }) => {
        const { title, figure } = criterionWords[id];
        return [id, `${title}, limit ${figure(limits[quantity]!, writer)}`];
      }),
    ),
  };
}
