import type { BenchFinding } from '../../../engine/bench/bench-finding.ts';
import type { Finding } from '../../../engine/finding.ts';
import type { Row } from '../../../record/document.ts';
import type { Stand } from '../../../record/read-load-tests.ts';
import { sectionName, setupName } from '../../../record/row-names.ts';
import { tracedPhoto } from '../../../record/traced-curves.ts';
import { quantityOf, siOf, textOf } from '../../read/values.ts';
import type { SetupRows } from './reading-rows.ts';

/** What to do next on the bench, and the field where it is done. */
export interface NextStep {
  words: string;
  /** Said behind the words. */
  finding?: Finding;
  /** Path key of the field to go to. */
  at?: string;
  done?: boolean;
  /** The step to go on to when it is done; left out: the handle. */
  goOn?: 'handle' | 'load-test';
}

export interface BlankState {
  sections: readonly Row[];
  diameters: readonly Row[];
  /** The whole blank's mass was given instead of the sections'. */
  weighedWhole: boolean;
  setups: readonly SetupRows[];
  /** Pictures of the blank. */
  stands: readonly Stand[];
  findings: readonly BenchFinding[];
  /** This weight waits until the ferrules are bound. */
  waits(test: Row, setup: Row): boolean;
  /** How a place from the tip reads in this shop: `12 in`. */
  show(row: Row, field: 'fromTip' | 'clampFromTip'): string;
}

/** The first thing that is missing or odd, in the order the bench does them. */
export function nextOnBlank(state: BlankState): NextStep {
  const { sections, findings } = state;
  if (sections.length === 0) return { words: 'Say how many sections the blank has and how they join.' };
  return (
    missingOfSections(state) ??
    stopping(findings) ??
    missingDiameter(state) ??
    missingMass(state) ??
    missingReading(state) ??
    doubted(findings) ?? {
      words: 'Go on to the handle: the planned readings are in. Readings says whether more would help.',
      done: true,
    }
  );
}

function missingOfSections({ sections }: BlankState): NextStep | undefined {
  const name = (index: number) => sectionName(sections[index], index);
  const unmeasured = sections.findIndex((row) => siOf(row, 'length') === undefined);
  if (unmeasured >= 0) {
    const words = `Measure the whole length of ${name(unmeasured)}, ferrule and all.`;
    return { words, at: `sections/${sections[unmeasured].id}/length` };
  }
  const unjoined = sections.findIndex((row, index) => index < sections.length - 1 && !isJoined(row));
  if (unjoined < 0) return undefined;
  const spigot = textOf(sections[unjoined], 'joint') === 'spigot';
  const [upper, lower] = [name(unjoined), name(unjoined + 1)];
  return spigot
    ? {
        words: `Seat ${upper} on ${lower} and measure the gap that stays open.`,
        at: `sections/${sections[unjoined].id}/spigotGap`,
      }
    : {
        words: `Mark how deep ${upper} and ${lower} go together when seated, and measure that overlap.`,
        at: `sections/${sections[unjoined].id}/overlap`,
      };
}

function isJoined(row: Row): boolean {
  return siOf(row, textOf(row, 'joint') === 'spigot' ? 'spigotGap' : 'overlap') !== undefined;
}

function stopping(findings: readonly BenchFinding[]): NextStep | undefined {
  const stop = findings.find(({ severity }) => severity === 'stop');
  return stop && { words: 'Fix this first:', finding: stop, at: stop.path };
}

function missingDiameter({ sections, diameters }: BlankState): NextStep | undefined {
  const measured = (id: string) =>
    diameters.some((row) => row.fields.section === id && siOf(row, 'outside') !== undefined);
  const index = sections.findIndex(({ id }) => !measured(id));
  if (index < 0) return undefined;
  const bare = sections[index];
  const words = `Measure the diameter of ${sectionName(bare, index)} at both ends and in the middle.`;
  return { words, at: `diameters/${bare.id}-d0/outside` };
}

function missingMass({ sections, weighedWhole }: BlankState): NextStep | undefined {
  const index = sections.findIndex((row) => siOf(row, 'mass') === undefined);
  if (index < 0 || weighedWhole) return undefined;
  const unweighed = sections[index];
  const words = `Weigh ${sectionName(unweighed, index)}, to 0.1 g if the scale can, or the whole blank at once.`;
  return { words, at: `sections/${unweighed.id}/mass` };
}

function missingReading({ setups, stands, show, waits }: BlankState): NextStep | undefined {
  if (setups.length === 0 && stands.length === 0) {
    return {
      words: 'Choose how to measure the bend: three photographs, or a tape for ten or twenty minutes.',
      at: 'readings',
    };
  }
  const picture = stands.map(missingPicture).find((next) => next !== undefined);
  if (picture) return picture;
  for (const [index, { setup, tests }] of setups.entries()) {
    const name = setupName(setup, index);
    const open = textOf(setup, 'kind') === 'span' ? missingOfSpan({ setup, tests }, name) : undefined;
    if (open) return open;
    for (const { test, readings } of tests) {
      const open = readings.find((row) => siOf(row, 'drop') === undefined && row.fields.setAside !== true);
      if (!open) continue;
      if (waits(test, setup)) return bindFirst(test);
      const hung = siOf(test, 'hung') ?? 0;
      const hang =
        hung > 0
          ? `Hang ${quantityOf(test.fields.hung)?.text} and wait until it is still`
          : 'Hang nothing yet';
      const clamp = isUntouched({ setup, tests })
        ? ` Clamp it ${show(setup, 'clampFromTip')} from the tip.`
        : '';
      const words = `${name}.${clamp} ${hang}, then ${readWords(open, show)}.`;
      return { words, at: `readings/${open.id}/drop` };
    }
  }
  return undefined;
}

/** Still to be clamped: nothing was read in it, and it says where. */
function isUntouched({ setup, tests }: SetupRows): boolean {
  const read = tests.flatMap(({ readings }) => readings).some((row) => siOf(row, 'drop') !== undefined);
  return !read && siOf(setup, 'clampFromTip') !== undefined;
}

function bindFirst(test: Row): NextStep {
  const words = `Bind the sleeve ferrules with tape or thread before you hang ${quantityOf(test.fields.hung)?.text}, then tick that they are bound.`;
  return { words, at: 'blank/-/ferrulesBound' };
}

function readWords(open: Row, show: BlankState['show']): string {
  if (open.fields.atClamp === true) return 'read right where the blank leaves the clamp';
  return `read the drop at ${siOf(open, 'fromTip') === 0 ? 'the tip' : show(open, 'fromTip')}`;
}

function missingPicture({ tests }: Stand): NextStep | undefined {
  const open = tests.findIndex((test) => !tracedPhoto(test));
  if (open < 0) return undefined;
  const taken = tests[open].photos.length > 0;
  const words = taken
    ? `Finish picture ${open + 1}: its curve is not read yet.`
    : `Take picture ${open + 1} of ${tests.length}.`;
  return { words, at: 'readings' };
}

const placesOfSpan = [
  ['supportTipSide', 'measure from the tip to the first support'],
  ['loadFromTip', 'measure from the tip to where the weight hangs'],
  ['supportButtSide', 'measure from the tip to the second support'],
] as const;

function missingOfSpan({ setup, tests }: SetupRows, name: string): NextStep | undefined {
  const place = placesOfSpan.find(([field]) => siOf(setup, field) === undefined);
  if (place) return { words: `${name}: ${place[1]}.`, at: `setups/${setup.id}/${place[0]}` };
  const open = tests.find(({ test }) => siOf(test, 'sag') === undefined)?.test;
  if (!open) return undefined;
  const hung = quantityOf(open.fields.hung);
  if (!hung)
    return { words: `${name}: say which weight you hang between them.`, at: `tests/${open.id}/hung` };
  const hang = hung.si > 0 ? `Hang ${hung.text} and wait until it is still` : 'Hang nothing yet';
  return { words: `${name}. ${hang}, then read the sag.`, at: `tests/${open.id}/sag` };
}

function doubted(findings: readonly BenchFinding[]): NextStep | undefined {
  const doubt = findings.find(({ severity }) => severity === 'doubt');
  return doubt && { words: 'Look again:', finding: doubt, at: doubt.path };
}
