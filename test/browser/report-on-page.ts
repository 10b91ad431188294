import type { Page } from 'playwright-core';
import { goToStep } from './open-step.ts';

/** A number that the report prints and the page shows: which line of the report has it, and where the page does. */
export interface Shared {
  /** Its groups hold the numbers; a line may match more than one of the list. */
  report: RegExp;
  step: string;
  /** Of the report’s numbers, what the page has no figure for. */
  but?: RegExp;
  /** Words of the row or sentence on the page; `each`: each group stands in a row of its own. */
  row: RegExp;
  each?: true;
  /** Of a list, the page has the largest ± alone. */
  largest?: true;
  /** The page has such a row only where it decides something. */
  seldom?: true;
  /** Said by the page of such marks only. */
  marks?: 'own' | 'start';
}

const shared: readonly Shared[] = [
  { report: /readings agree within ([^.]*)\./, step: 'Blank', row: /readings agree within/ },
  { report: /^ +([\d ⁄]+ (?:in|mm) +[\d.]+ +[\d.]+ to [\d.]+)$/, step: 'Blank', row: /\d to \d/ },
  { report: /^Blank: \d+ sections, (.*?) together/, step: 'Blank', row: /^\d+ \S.* (?:in|mm)$/ },
  {
    report: /The clamps were off by (.*?); corrected/,
    but: /\b0°|-/g,
    step: 'Blank',
    row: /The clamp was/,
    each: true,
  },
  { report: /^Blank: .*Free length ([^;]*);/, step: 'Blank', row: /held at the front of the grip/ },
  { report: /^Blank: .*front is .* end\. Held at the grip, (\S+ g)/, step: 'Finish', row: /^tip drop under/ },
  {
    report: /^Line beside the blank\. Held at the grip, (\S+ g) /,
    step: 'Blank',
    row: /^Held at the grip, /,
  },
  { report: /: bare (\S+ Hz ±\S+ Hz, then \S+ Hz ±\S+ Hz)/, step: 'Blank', row: /^Bare blank/ },
  { report: /; finished (\S+ Hz ±\S+ Hz, then \S+ Hz ±\S+ Hz)/, step: 'Blank', row: /^Finished rod/ },
  {
    report: /number (\d+): first 30 ft (\d+ gr \(\S+ g\); the tip load is \S+)/,
    step: 'Blank',
    row: /grains/,
  },
  { report: /Limits: line angle (\S+°),/, step: 'Layout', row: /^line angle, limit/ },
  { report: /Limits: .*, gap ([^,]*),/, step: 'Layout', row: /^gap above the ring, limit/ },
  { report: /Limits: .* line (\S+ 1\/m)/, step: 'Layout', row: /^bend added by the line, limit/ },
  { report: /^ {2}STANDING .* 1\/m {2}(.* at .*)$/, step: 'Layout', row: /^(Between g|G)uide/ },
  { report: /^ {2}proposed +(\S+°)/, step: 'Layout', row: /^line turns most/ },
  { report: /^ {2}proposed +\S+° +(\S.*?) {2}/, step: 'Layout', row: /^gap above the ring \d/ },
  { report: /^ {2}proposed .*?(\S+ 1\/m)/, step: 'Layout', row: /^bend added by the line \d/, seldom: true },
  { report: /^Largest surface strain: (.*?)\. Caution/, step: 'Layout', row: /%/, each: true },
  { report: /^ {2}STANDING: line angle (.*), bend added/, step: 'Layout', row: /^On 95 of 100 blanks/ },
  { report: /better than the start on (\d+ of \d+)/, step: 'Layout', row: /beat/, marks: 'own' },
  {
    report: /^How sure is each place .*?: (.*?)\./,
    but: /\d+ (±0\b|(?=±))/g,
    step: 'Layout',
    row: /^best place ±/,
  },
  { report: /Keeping the \S+ marks costs at most (\S+ %)/, step: 'Layout', row: /worst reading at most/ },
  {
    report: /^ +(.*): the reel feels (.*) winding in, (.*) letting out; the worst is at (.*) of/,
    step: 'Layout',
    row: / g/,
  },
  { report: /Guides add (.*? g)\. /, step: 'Finish', row: /^Guides add/ },
  { report: /first frequency: bare (.*), finished (.*)/, step: 'Finish', row: /^first frequency/ },
  { report: /tip drop under (.*), level: bare (.*), finished (.*)/, step: 'Finish', row: /^tip drop under/ },
  {
    report: /worst of the marks, of its limit: bare (.*), finished (.*)/,
    step: 'Finish',
    row: /^worst of the marks/,
  },
  {
    report:
      /^ +(\d+) {2}\S.*? {2,}(\d\S*(?: \d\S*)?) (?:in|mm) +(\d.*?) (?:in|mm) +\d.*? (?:in|mm) +\d.*? (?:in|mm) +(−.*? … \+\S+(?: \d\S*)?)/,
    step: 'Marks',
    row: /^\d.* … /,
    marks: 'own',
  },
  { report: /^ +\d+ .*? {2,}(\d+° (?:left|right), \S+) in/, step: 'Marks', row: /^\d/, marks: 'own' },
  { report: /^\w[\w ]*?, (\d.*? long(?:; line side .*)?)(?::|$)/, step: 'Marks', row: / long/, marks: 'own' },
  { report: /^ {2}start .* 1\/m {2}(.* at .*)$/, step: 'Layout', row: /^Start \(/ },
  {
    report: /^The tip under each load: (.*?)\.$/,
    largest: true,
    step: 'Layout',
    row: /^On 95 of 100 blanks/,
  },
  { report: /^ {2}bare, held .*: (Counted .*)$/, step: 'Blank', row: /^Counted/ },
  { report: /^The line off the reel: .*?(The line turns .*)$/, step: 'Layout', row: /^The line turns/ },
  { report: /^(Spindle’s tilt .*)$/, step: 'Layout', row: /^Spindle/ },
  { report: /^ {2}guide (\d+: .*; the funnel asks for .*)$/, step: 'Layout', row: /the funnel asks for/ },
  {
    report: /^ +(\d+ g: turns .*)$/,
    step: 'Layout',
    row: /^\d+ g \d.*°.*(in|mm), (blank|grip|foregrip)$/,
  },
  { report: /^(The drag slips .*)$/, step: 'Layout', row: /^The drag/ },
  { report: /^Guides round the blank: (.*? at \d+ g\.)/, step: 'Layout', row: /^The line (clears|n|l)/ },
  { report: /(It clears the foregrip by .*? (?:in|mm))/, step: 'Layout', row: /foregrip/ },
  { report: /^Guides round .* (Closest: .*? of \S+°)\./, step: 'Layout', row: /^Closest/ },
  { report: /(Pulled straight at .*? by \S+°)/, step: 'Layout', row: /^Pulled straight/ },
  { report: /(Stiffness in twist .*)$/, step: 'Layout', row: /^Stiffness in twist/ },
  { report: /^Angles: (.*)$/, step: 'Layout', row: /^Turn guide/ },
  {
    report: /^ +(\d+ g {2}(?:straight down|pulled|rod rolled) .*)$/,
    step: 'Layout',
    row: /^\d+ g (straight down|pulled|rod rolled)/,
  },
  { report: /^Held with both hands: (.*)$/, step: 'Layout', row: /lower hand holds/ },
  { report: /^ +(\d+ g +\d+ g (?:down|up) .*)$/, step: 'Layout', row: /^\d+ g \d+ g (down|up)/ },
  {
    report: /^Next reading: (.*?\.(?: Time .*?\.)?) /,
    step: 'Blank',
    row: /^(If you want to go on: )?(Hold|Hang|Turn|Look|Set|Lay)/,
    marks: 'start',
  },
  {
    report: /^((?:Enough|Keep the start).*: .*)$/,
    step: 'Blank',
    row: /^(Enough|Keep the start)/,
    marks: 'start',
  },
];

/** What stands on a step last, once its workers are done. */
const lastToCome = {
  Layout: /placed anew on \d+ blanks/,
  Blank: /^Finished rod$/,
  Marks: /… \+/,
  Finish: /^worst of the marks/,
};

/** Every sentence and every row of the tables of these steps, folds open, as a screen reader has them. */
export async function readSteps(page: Page, marks: 'own' | 'start'): Promise<Map<string, string[]>> {
  const read = new Map<string, string[]>();
  for (const step of ['Layout', 'Blank', 'Marks', 'Finish'] as const) {
    if (step === 'Marks' && marks === 'start') continue;
    await goToStep(page, step);
    await page.getByText(lastToCome[step]).first().waitFor({ timeout: 120_000 });
    await page.getByRole('progressbar').waitFor({ state: 'detached', timeout: 120_000 });
    if (step === 'Blank' && marks === 'start')
      await page.getByText(/About [\d.]+ minutes/).waitFor({ timeout: 240_000 });
    read.set(step, await page.evaluate(rowsInSight));
  }
  return read;
}

function rowsInSight(): string[] {
  for (const fold of document.querySelectorAll('details')) fold.open = true;
  const main = document.querySelector('main')!.cloneNode(true) as HTMLElement;
  for (const hidden of main.querySelectorAll('[aria-hidden=true]:not(svg)')) hidden.remove();
  const rows = main.querySelectorAll('tr, p, li, caption, figcaption, svg text');
  return [...rows].map((row) => {
    const cells = row.matches('tr') ? [...row.children] : [row];
    return cells
      .map(({ textContent }) => textContent)
      .join(' ')
      .replace(/\s+/g, ' ')
      .trim();
  });
}

const number = /[−-]?\d[\d.,]*\d(?: \d+\/\d+|\/\d+)?|\d(?: \d+\/\d+|\/\d+)?/g;

/** The numbers of a text, fractions in one way: `12 3/16`. */
function numbersIn(text: string): string[] {
  const plain = text
    .replace(/([−-]) (?=\d)/g, '$1')
    .replace(/(\d?)([⁰¹²³⁴-⁹]+)⁄([₀-₉]+)/g, (_, whole: string, top: string, below: string) => {
      return `${whole && `${whole} `}${top.normalize('NFKD')}/${below.normalize('NFKD')}`;
    });
  return plain.replaceAll('⁄', '/').match(number) ?? [];
}

/** The report's lines that the page of such marks says too. */
export function sharedOf(report: string, marks: 'own' | 'start'): (Shared & { told: string })[] {
  const standing = marks === 'own' ? /^ {2}your marks\b/ : /^ {2}start\b/;
  // where the start stays for want of sureness, it is what the report proposes; the page shows what was placed
  const stays = /^Keep the start for now/m.test(report);
  return report.split('\n').flatMap((line) =>
    shared.flatMap((one) => {
      const found = one.report.exec(line.replace(standing, '  STANDING'));
      if (!found || (one.marks ?? marks) !== marks) return [];
      if (stays && /^ {2}proposed/.test(line)) return [];
      return [
        {
          ...one,
          told: toldOf(one, found.slice(1).join(' ')),
        },
      ];
    }),
  );
}

function toldOf({ but, largest }: Shared, words: string): string {
  if (!largest) return words.replace(but ?? /^$/, '');
  const size = (part: string) => inchesOf(numbersIn(part).at(-1) ?? '');
  return words
    .replace(/[^,]* (?=±)/g, '')
    .split(',')
    .toSorted((a, b) => size(b) - size(a))[0];
}

/** `1 1/8`, `7/8`, `2`. */
function inchesOf(text: string): number {
  return text.split(' ').reduce((sum, part) => {
    const [top, below = '1'] = part.split('/');
    return sum + Number(top) / Number(below);
  }, 0);
}

/** How many numbers are compared. */
export function countOf(lines: readonly { told: string }[]): number {
  return lines.reduce((sum, { told }) => sum + numbersIn(told).length, 0);
}

/** What of it the page does not say, with the rows that should have it. */
export function differing(
  lines: readonly (Shared & { told: string })[],
  read: ReadonlyMap<string, string[]>,
): { told: string; step: string; page: string[] }[] {
  return lines.flatMap(({ told, step, row, each, seldom }) => {
    const page = (read.get(step) ?? []).filter((words) => row.test(words));
    const parts = (each ? told.split(', ') : [told]).map(numbersIn);
    if (seldom && page.length === 0) return [];
    const all = parts.every((numbers) => page.some((words) => inOrder(numbers, words)));
    return all ? [] : [{ told, step, page }];
  });
}

/** Whether these numbers stand in that order in the row. */
function inOrder(numbers: readonly string[], row: string): boolean {
  const there = numbersIn(row);
  let at = 0;
  for (const one of numbers) {
    at = there.indexOf(one, at) + 1;
    if (at === 0) return false;
  }
  return true;
}
