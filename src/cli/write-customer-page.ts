import { customerPage } from '../sheets/customer-page.ts';
import { customerRod } from '../sheets/customer-rod.ts';
import { ladderWriter } from '../words/ladder-writer.ts';
import type { OpenBuild } from './open-build.ts';
import { workBuildFile } from './work-build-file.ts';
import { writeOut } from './write-out.ts';

export interface CustomerPageOptions {
  out: string;
  shop?: string;
  number?: string;
}

/** The finished rod as one HTML file for its customer; answers what was written. */
export function writeCustomerPage(
  build: OpenBuild,
  { out, shop = '', number = '' }: CustomerPageOptions,
): string {
  const { bench, choices, work } = workBuildFile(build);
  const { deliveredAt, ...said } = build.delivered;
  const rod = {
    ...said,
    title: choices.title,
    number,
    shop,
    date: (deliveredAt ?? new Date().toISOString()).slice(0, 10),
    blank: work.blank,
    marks: work.marks,
    loads: (work.readings.own ?? work.readings.best).loads,
    handleM: bench.handle.gripFrontFromButtM,
    measured: work.fitted !== undefined,
  };
  const page = customerPage(customerRod(rod, ladderWriter(build.writer, work.question.loads.kg)));
  writeOut(out, page);
  const marks =
    work.marksAre === 'own' ? '' : ' It has no marks of its own yet: the page shows the proposed ones.';
  return `${out} is written. It holds all it shows; any browser opens and prints it.${marks}`;
}
