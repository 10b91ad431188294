/** What has changed since a sheet was printed or a work was done. */
import type { HandleLength, RodValues } from '../record/rod-as-read.ts';
import type { Change, Deed, ValueChange } from '../record/work-since.ts';
import { threadCalled } from './colour-words.ts';
import { wrapName } from './wrap-name.ts';
import type { Writer } from './writer.ts';

export const deedWords: Record<Deed, string> = {
  strips: 'you printed the strips',
  marks: 'you printed the list of marks',
  wraps: 'you printed the wrap sheet',
  rack: 'you printed the rack sheet',
  finish: 'you printed the finish sheet',
  bench: 'you printed the bench sheet',
  'handle-glued': 'you glued the handle',
  'last-wrap': 'you ticked off the last wrap',
  'last-coat': 'you brushed on the last coat',
};

/** `guide 4 moved 12 mm toward the butt, to 1112 mm from the tip`. */
export function changeInWords(change: Change, w: Writer): string {
  switch (change.kind) {
    case 'section-new':
      return `${change.section} is a new section`;
    case 'section-length':
      return `${change.section} is now ${w.length(change.lengthM)} long, was ${w.length(change.wasM)}`;
    case 'joint-depth':
      return `the joint below ${change.section} sits ${w.fine(Math.abs(change.deeperM))} ${change.deeperM > 0 ? 'deeper' : 'less deep'}`;
    case 'guide-count':
      return `there are now ${change.count} guides, were ${change.was}`;
    case 'guide-moved':
      return `guide ${change.guide} moved ${w.length(Math.abs(change.towardsButtM))} toward the ${change.towardsButtM > 0 ? 'butt' : 'tip'}, to ${w.length(change.fromTipM)} from the tip`;
    case 'guide-size':
      return `guide ${change.guide} is now ${change.name}, was ${change.was}`;
    case 'rack-place':
      return `place ${change.place} now takes ${ofBag(change.number)}, was ${ofBag(change.was)}`;
    case 'handle-length':
      return `${handleNames[change.what]} is now ${w.length(change.lengthM)}, was ${change.wasM === undefined ? 'not given' : w.length(change.wasM)}`;
    case 'wrap-new':
      return `${wrapName(change.wrap)} is a new wrap`;
    case 'wrap-gone':
      return `${wrapName(change.wrap)} is no longer wrapped`;
    case 'wrap-length':
      return `${wrapName(change.wrap)} is now ${w.fine(change.lengthM)} long, was ${w.fine(change.wasM)}`;
    case 'value':
      return valueChange(change, w);
  }
}

const ofBag = (number: number | undefined) => (number === undefined ? 'none of the bag' : `number ${number}`);

const handleNames: Record<HandleLength, string> = {
  gripFront: "the grip's front",
  gripLength: "the grip's length",
  seatLength: "the seat's length",
};

function valueChange<K extends keyof RodValues>({ what, now, was }: ValueChange<K>, writer: Writer): string {
  const [name, say] = values[what] as ValueWords<K>;
  return `${name} is now ${say(now as RodValues[K], writer)}, was ${say(was as RodValues[K], writer)}`;
}

type ValueWords<K extends keyof RodValues> = [name: string, say: (value: RodValues[K], w: Writer) => string];

const values: { [K in keyof RodValues]: ValueWords<K> } = {
  arbors: ['the set of arbors', ({ count, widthM }, w) => `${count} of ${w.fine(widthM)}`],
  glueLine: ["the grip's glue line", ({ lengthM }, w) => w.calliper(lengthM)],
  reamer: ["the reamer's stop", ({ shortM }, w) => `${w.fine(shortM)} short`],
  thread: ['the thread', threadCalled],
  trim: ['the trim', threadCalled],
  turn: ['one turn of thread', ({ widthM }, w) => w.thread(widthM)],
  lockTurns: ['the number of turns over the tag', ({ turns }) => `${turns}`],
  trimTurns: ['the number of trim turns at each end', ({ turns }) => `${turns}`],
  underwrap: ['the underwrap', ({ laid }) => (laid ? 'under every foot' : 'left out')],
  mix: [
    'the mix',
    (mix) =>
      mix
        ? `${mix.partA.toFixed(1)} + ${mix.partB.toFixed(1)} ${mix.unit}, ${mix.batches} to a coat`
        : 'not known',
  ],
  room: ['the room', ({ roomC }, w) => w.temperature(roomC)],
  potLife: ['the pot life', ({ lastsS, statedC }, w) => `${w.duration(lastsS)} at ${w.temperature(statedC)}`],
  turning: ['the time of turning', ({ lastsS }, w) => w.duration(lastsS)],
  recoating: ['the recoat window', ({ fromS, untilS }, w) => `${w.duration(fromS)} to ${w.duration(untilS)}`],
  bending: ['the time before bending', ({ afterS }, w) => w.duration(afterS)],
  fishing: ['the time before fishing', ({ afterS }, w) => w.duration(afterS)],
  halving: ['the warming that halves a time', ({ everyC }, w) => w.warmer(everyC)],
};
