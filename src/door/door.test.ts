import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { encode } from 'fast-png';
import { afterAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { paintScan } from '../../test/render/scan-sheet.ts';
import { answerRequest } from './answer-request.ts';
import { runLineProtocol } from './line-protocol.ts';
import { operations } from './operations.ts';
import { publishedSchemas } from './published-schema.ts';
import { failed, refused } from './shapes/measures.ts';

type Json = Record<string, unknown>;
const lines = (name: string): Json[] =>
  readFileSync(new URL(`../../examples/engine/${name}`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
const requests = lines('requests.jsonl');
const request = (op: string) => structuredClone(requests.find((one) => one.op === op) as Json);
const answerShape = (op: string) => z.union([operations[op].answer, refused, failed]);

/** Sets, or with undefined removes, the value at a path. */
function putAt(target: Json, [step, ...rest]: string[], value: unknown): void {
  if (rest.length > 0) putAt(target[step] as Json, rest, value);
  else if (value === undefined) delete target[step];
  else target[step] = value;
}

describe('our own examples', () => {
  const published = lines('answers.jsonl');
  it('there is one of every operation that needs no picture', () => {
    const pictured = ['trace', 'scan'];
    const plain = Object.keys(operations).filter((op) => !pictured.includes(op));
    expect(new Set(requests.map(({ op }) => op))).toEqual(new Set(plain));
  });
  it.each(requests.map((asked, index) => [asked.op as string, asked, published[index]] as const))(
    '%s: request and answer fit their shapes, and the published answer is today’s',
    async (op, asked, then) => {
      expect(operations[op].request.safeParse(asked).error).toBeUndefined();
      expect(answerShape(op).safeParse(then).error).toBeUndefined();
      const now = JSON.parse(JSON.stringify(await answerRequest(asked)));
      expect(answerShape(op).safeParse(now).error).toBeUndefined();
      expect(now.status).toBe('converged');
      expect(headlines(now)).toEqual(headlines(then));
    },
    20_000,
  );
  it('the first is the elastica P L²/EI = 2 (Mattiasson 1981, IJNME 17:145, table 1)', async () => {
    const { points } = (await answerRequest(requests[0])) as { points: { xM: number; yM: number }[] };
    expect(points[0].xM).toBeCloseTo(1 - 0.16064, 4);
    expect(points[0].yM).toBeCloseTo(-0.49346, 4);
  });
});

describe('a line that rubs and may lie on the blank', () => {
  const asked = requests.at(-1) as Json;
  const bent = async (change: Json) =>
    (await answerRequest({ ...structuredClone(asked), ...change })) as {
      status: string;
      rings: { lineAngleRad: number }[];
      lineTensionN?: number[];
      contact?: { stretches: { touches: boolean }[]; clear: { largestClearM: number }[] };
    };
  const rubs = (coefficient: number, direction: 'in' | 'out') => ({ friction: { coefficient, direction } });

  it.each(['in', 'out'] as const)('line %s: tension grows by exp(±µ·turn) from ring to ring', async (way) => {
    const { rings, lineTensionN = [] } = await bent({ contact: undefined, ...rubs(0.2, way) });
    const sign = way === 'in' ? 1 : -1;
    let tensionN = (asked as { load: { line: { tensionN: number } } }).load.line.tensionN;
    expect(lineTensionN).toHaveLength(rings.length);
    rings.forEach(({ lineAngleRad }, k) => {
      tensionN *= Math.exp(sign * 0.2 * lineAngleRad);
      expect(lineTensionN[k]).toBeCloseTo(tensionN, 6);
    });
  });

  it('without friction one tension runs through, and without contact nothing touches', async () => {
    const free = await bent({ friction: undefined, contact: undefined });
    expect(free.lineTensionN).toBeUndefined();
    expect(free.contact).toBeUndefined();
    const { lineTensionN } = await bent({ contact: undefined, ...rubs(0, 'in') });
    for (const tensionN of lineTensionN ?? []) expect(tensionN).toBeCloseTo(1.5, 9);
  });

  it('a stretch that touches is longer than the largest clear one there, one that does not is shorter', async () => {
    const { contact } = await bent({ friction: undefined });
    const guides = (asked as { guides: { fromTipM: number }[] }).guides;
    const spans = guides.slice(1).map(({ fromTipM }, k) => fromTipM - guides[k].fromTipM);
    expect(contact?.stretches.map(({ touches }) => touches)).toContain(true);
    expect(contact?.stretches.map(({ touches }) => touches)).toContain(false);
    spans.forEach((spanM, k) => {
      expect(contact?.stretches[k].touches).toBe(spanM > (contact?.clear[k].largestClearM ?? 0));
    });
  });

  it('friction or contact without a line is refused at its field', async () => {
    const answer = await answerRequest({ ...asked, load: { tip: { xN: 0, yN: -1 } } });
    expect(answer).toMatchObject({ status: 'refused' });
    const { findings } = answer as { findings: { path: string; message: string }[] };
    expect(findings.map(({ path }) => path)).toEqual(['friction', 'contact']);
  });
});

/** What a reader would compare: rounded to what each quantity is promised to. */
function headlines(answer: Json): unknown {
  const { points, hz, fromTipM, stiffness, lineAngleRad } = answer as {
    points?: { xM: number; yM: number }[];
    hz?: number[];
    fromTipM?: number[];
    stiffness?: { EINm2: number }[];
    lineAngleRad?: { least: number; largest: number };
  };
  const close = (value: number, unit: number) => Math.round(value / unit);
  return {
    tip: points && [close(points[0].xM, 2e-3), close(points[0].yM, 2e-3)],
    hz: hz?.map((value) => close(value, 0.02)),
    guides: fromTipM?.length,
    fan: lineAngleRad && [close(lineAngleRad.least, 1e-3), close(lineAngleRad.largest, 1e-3)],
    rows: stiffness?.length,
  };
}

describe('published schemas', () => {
  it('are current (vitest -u writes them anew)', async () => {
    const { request: asked, answer } = publishedSchemas();
    const print = (schema: object) => `${JSON.stringify(schema, null, 2)}\n`;
    await expect(print(asked)).toMatchFileSnapshot('../../docs/schema/engine-request.schema.json');
    await expect(print(answer)).toMatchFileSnapshot('../../docs/schema/engine-answer.schema.json');
  });
});

describe('what makes no sense is refused with field, value and remedy', () => {
  const ring = (fromTipM: number) => ({ fromTipM, ringHeightM: 0.01, side: 'under' });
  const pull = { line: { tensionN: 1, pullAngleRad: 0 } };
  const backwards = [
    { fromTipM: 1, EINm2: 1 },
    { fromTipM: 0.5, EINm2: 1 },
  ];
  const twice = [
    { fromTipM: 1, kgPerM: 1 },
    { fromTipM: 1, kgPerM: 2 },
  ];
  const noDrop = [{ nominalAngleRad: 0, tests: [{ readings: [{ fromTipM: 0, dropM: 'x' }] }] }];
  /** What is wrong · operation · what is put in · where the finding points · what it says. */
  it.each<[string, string, Json, string, RegExp]>([
    ['an unknown key', 'bend', { lengthMm: 3 }, 'lengthMm', /"lengthMm".*not known/],
    ['an unknown key inside', 'bend', { 'rod.lenghtM': 3 }, 'rod.lenghtM', /rod has "lenghtM"/],
    ['a length of nothing', 'bend', { 'rod.lengthM': 0 }, 'rod.lengthM', /is 0; give at least/],
    ['a huge length', 'bend', { 'rod.lengthM': 1e12 }, 'rod.lengthM', /1000000000000; give at most/],
    ['text for a number', 'bend', { buttAngleRad: '45°' }, 'buttAngleRad', /"45°"; give a number/],
    ['a key left out', 'bend', { load: undefined }, 'load', /load is missing; give an object/],
    ['no table', 'bend', { 'rod.stiffness': [] }, 'rod.stiffness', /a list of 0; give at least 1/],
    ['stiffness below zero', 'bend', { 'rod.stiffness.0.EINm2': -1 }, 'rod.stiffness[0].EINm2', /-1/],
    [
      'a table out of order',
      'bend',
      { 'rod.stiffness': backwards },
      'rod.stiffness[1]',
      /0.5: it comes after 1 m/,
    ],
    ['a station twice', 'bend', { 'rod.massPerLength': twice }, 'rod.massPerLength[1]', /each station once/],
    ['a line without rings', 'bend', { load: pull }, 'guides', /line runs through rings/],
    ['a line without a reel', 'bend', { load: pull, guides: [ring(0)] }, 'reel', /line comes from a reel/],
    [
      'guides out of order',
      'bend',
      { guides: [ring(0), ring(0.5), ring(0.3)] },
      'guides[2]',
      /0.3: it does not follow/,
    ],
    [
      'two guides at one place',
      'bend',
      { guides: [ring(0), ring(0.5), ring(0.5)] },
      'guides[2]',
      /each place once/,
    ],
    ['no tip-top', 'bend', { guides: [ring(0.1)] }, 'guides[0].fromTipM', /tip-top comes first/],
    [
      'a guide beyond the rod',
      'bend',
      { guides: [ring(0), ring(1.2)] },
      'guides[1].fromTipM',
      /beyond the rod/,
    ],
    ['a mass below zero', 'bend', { masses: [{ fromTipM: 0, massKg: -1 }] }, 'masses[0].massKg', /-1/],
    [
      'an unknown side',
      'bend',
      { guides: [{ ...ring(0), side: 'left' }] },
      'guides[0].side',
      /"under" or "over"/,
    ],
    ['an empty ladder', 'layout', { ladder: [] }, 'ladder', /a list of 0/],
    [
      'no line at all',
      'layout',
      { ladder: [{ tensionN: 0, pullAngleRad: 0, tiedN: 3 }] },
      'ladder',
      /no line at all/,
    ],
    [
      'a zone turned round',
      'layout',
      { keepOut: [{ fromTipM: 0.7, toTipM: 0.6 }] },
      'keepOut[0]',
      /nearer the tip first/,
    ],
    ['zones that leave no room', 'layout', { keepOut: [{ fromTipM: 0.12, toTipM: 1.97 }] }, 'keepOut', /./],
    [
      'too few ring heights',
      'layout',
      { 'guides.ringHeightsM': [0.01] },
      'guides.ringHeightsM',
      /1 values for 10/,
    ],
    ['a fit of nothing', 'fit', { blank: undefined }, 'blank', /missing/],
    [
      'an unknown kind of set-up',
      'fit',
      { setups: [{ kind: 'swing' }] },
      'setups[0].kind',
      /"swing".*"span"/,
    ],
    [
      'a drop of no tape',
      'fit',
      { setups: noDrop },
      'setups[0].tests[0].readings[0].dropM',
      /"x"; give a number/,
    ],
    [
      'a reading behind the clamp',
      'fit',
      { 'setups.0.clampFromTipM': 1.2 },
      'setups[0].tests[0].readings[4].fromTipM',
      /1.5: it lies behind the clamp/,
    ],
    ['half a mode', 'frequency', { modes: 1.5 }, 'modes', /1.5; give a whole number/],
  ])('%s', async (_, op, put, path, message) => {
    const asked = request(op);
    for (const [at, value] of Object.entries(put)) putAt(asked, at.split('.'), value);
    const answer = (await answerRequest(asked)) as {
      status: string;
      findings?: { path: string; message: string }[];
    };
    expect(answer.status).toBe('refused');
    const match = answer.findings?.find((one) => one.path.startsWith(path));
    expect(match, JSON.stringify(answer.findings)).toBeDefined();
    expect(match?.message).toMatch(message);
  });

  it.each([[5], [null], [[]], ['bend'], [{}], [{ op: 'constructor' }], [{ op: ['bend'] }]])(
    '%j is no request',
    async (asked) => {
      expect(await answerRequest(asked)).toMatchObject({ status: 'refused' });
    },
  );
});

describe('what makes sense is taken', () => {
  const taken = async (asked: Json) =>
    expect(await answerRequest(asked)).toMatchObject({ status: 'converged' });
  it('no load at all, zero mass per length, masses left out', async () => {
    const asked = request('bend');
    (asked.rod as Json).massPerLength = [{ fromTipM: 0, kgPerM: 0 }];
    await taken({ ...asked, load: {} });
    await taken({ ...asked, load: { tip: { xN: 0, yN: 0 } } });
    await taken({ ...asked, masses: [], guides: [], load: {} });
  });
  it('tables of a fit’s answer as they are', async () => {
    const { stiffness, massPerLength, restCurvature } = (await answerRequest(request('fit'))) as Json;
    await taken({ ...request('bend'), rod: { lengthM: 2.49, stiffness, massPerLength, restCurvature } });
  });
  it('rings without a line in the load are answered all the same', async () => {
    const asked = requests.find(({ op, guides }) => op === 'bend' && guides) as Json;
    const load = { tip: { xN: 0, yN: -0.5 } };
    const answer = (await answerRequest({ ...asked, load })) as { rings: unknown[]; spans: unknown[] };
    expect(answer.rings).toHaveLength(11);
    expect(answer.spans).toHaveLength(10);
  });
});

describe('pictures', () => {
  const folder = mkdtempSync(join(tmpdir(), 'door-'));
  const image = join(folder, 'bent.png');
  afterAll(() => rmSync(folder, { recursive: true }));
  // A dark arc on white: 500 px a metre, four marks at the corners of a square metre.
  const arc = (x: number) => 120 + 300 * ((x - 100) / 500) ** 2;
  const marks = [
    [50, 50],
    [550, 50],
    [550, 550],
    [50, 550],
  ].map(([x, y]) => ({ px: [x, y], atM: [(x - 50) / 500, (550 - y) / 500] }));
  const asked = { op: 'trace', image, marks, ends: { butt: [100, 120], tip: [600, 420] } };

  it('a picture is read from its path and traced', async () => {
    const [width, height] = [700, 600];
    const data = new Uint8Array(width * height * 3).fill(245);
    for (let x = 90; x < 610; x++) {
      for (let y = Math.ceil(arc(x) - 4); y <= arc(x) + 4; y++)
        data.fill(25, 3 * (y * width + x), 3 * (y * width + x) + 3);
    }
    writeFileSync(image, encode({ width, height, data, channels: 3, depth: 8 }));
    const answer = JSON.parse(JSON.stringify(await answerRequest(asked)));
    expect(answerShape('trace').safeParse(answer).error).toBeUndefined();
    expect(answer.status).toBe('converged');
    for (const { xM, yM } of answer.points) {
      expect(Math.abs(yM - (550 - arc(xM * 500 + 50)) / 500)).toBeLessThan(0.004);
    }
  }, 30_000);

  it.each([
    ['a file that is not there', { image: join(folder, 'none.png') }, /cannot be read/],
    ['a folder', { image: folder }, /is no file/],
    ['something that is no picture', { image: fileURLToPath(import.meta.url) }, /./],
    ['no marks', { marks: [] }, /./],
  ])('%s is refused with the reason', async (_, change, message) => {
    const answer = (await answerRequest({ ...asked, ...change })) as Json & {
      findings: { message: string }[];
    };
    expect(answer.status).toBe('refused');
    expect(answer.findings[0].message).toMatch(message);
  });
});

describe('no request brings the door down', () => {
  it('numbers replaced by senseless or extreme ones are refused or answered in shape', async () => {
    const strange = fc.constantFrom<unknown>(0, -1, 1e-9, 1e6, 1e308, -1e308, 0.5, null, 'x', [], {}, true);
    const base = fc.constantFrom(...requests.filter(({ op }) => op === 'bend' || op === 'frequency'));
    await fc.assert(
      fc.asyncProperty(
        base,
        fc.array(fc.tuple(fc.nat(), strange), { minLength: 1, maxLength: 3 }),
        async (asked, changes) => {
          const changed = structuredClone(asked);
          for (const [place, value] of changes) replaceLeaf(changed, place, value);
          const answer = JSON.parse(JSON.stringify(await answerRequest(changed)));
          const shape =
            typeof changed.op === 'string' && Object.hasOwn(operations, changed.op)
              ? answerShape(changed.op)
              : refused;
          expect(shape.safeParse(answer).error).toBeUndefined();
        },
      ),
      { seed: 12, numRuns: 150 },
    );
  }, 60_000);
});

/** Puts a value in place of the `place`-th leaf, counted round and round. */
function replaceLeaf(target: Json, place: number, value: unknown): void {
  const leaves: [holder: Json, key: string][] = [];
  const walk = (holder: Json) => {
    for (const [key, inner] of Object.entries(holder)) {
      if (inner !== null && typeof inner === 'object') walk(inner as Json);
      else leaves.push([holder, key]);
    }
  };
  walk(target);
  const [holder, key] = leaves[place % leaves.length];
  holder[key] = value;
}

describe('line by line', () => {
  async function run(chunks: (string | Uint8Array)[], longestLine?: number) {
    const written: string[] = [];
    async function* input() {
      yield* chunks;
    }
    const code = await runLineProtocol(input(), { write: (line) => void written.push(line), longestLine });
    return { code, answers: written.map((line) => JSON.parse(line)), written };
  }
  const frequency = JSON.stringify(request('frequency'));
  const tip = JSON.stringify(requests[0]);

  it('answers in order, one line each, the last without its line end too', async () => {
    const { code, answers, written } = await run([`${frequency}\n${tip}\r\n\n{"op":"x"}\n${frequency}`]);
    expect(code).toBe(0);
    expect(answers.map((answer) => answer.status)).toEqual([
      'converged',
      'converged',
      'refused',
      'converged',
    ]);
    expect(answers.map((answer) => 'hz' in answer)).toEqual([true, false, false, true]);
    for (const line of written) expect(line.match(/\n/g)).toHaveLength(1);
  });
  it('empty input is no error', async () => {
    expect(await run([])).toMatchObject({ code: 0, answers: [] });
    expect(await run(['\n \n'])).toMatchObject({ code: 0, answers: [] });
  });
  it('a bad line between good ones is refused and the process goes on; nothing but bad ones is 2', async () => {
    const mixed = await run([`nonsense\n${tip}\n`]);
    expect(mixed.code).toBe(0);
    expect(mixed.answers.map((answer) => answer.status)).toEqual(['refused', 'converged']);
    expect((await run(['nonsense\nmore\n'])).code).toBe(2);
    expect((await run(['5\n'])).code).toBe(0);
  });
  it('lines may come in any pieces, split inside a letter too, with a byte order mark', async () => {
    const bytes = Buffer.from(`\uFEFF{"op":"ß½"}\n${tip}\n`);
    const pieces = Array.from(bytes, (byte) => Uint8Array.of(byte));
    const { answers } = await run(pieces);
    expect(answers[0].findings[0].message).toContain('ß½');
    expect(answers[1].status).toBe('converged');
  });
  it('does not wait for the end of input', async () => {
    let answered: () => void = () => undefined;
    const first = new Promise<void>((resolve) => {
      answered = resolve;
    });
    async function* input() {
      yield `${frequency}\n`;
      await first;
      yield `${frequency}\n`;
    }
    let count = 0;
    const code = await runLineProtocol(input(), {
      write: () => {
        count++;
        answered();
      },
    });
    expect([code, count]).toEqual([0, 2]);
  });
  it('a line longer than allowed is refused and the next one answered', async () => {
    const { code, answers } = await run(
      [`{"x":"${'y'.repeat(9000)}`, `${'y'.repeat(9000)}"}\n`, `${frequency}\n`],
      8000,
    );
    expect(code).toBe(0);
    expect(answers.map((answer) => answer.status)).toEqual(['refused', 'converged']);
  });
});

describe('a scan', () => {
  const folder = mkdtempSync(join(tmpdir(), 'fairbend-scan-'));
  const image = join(folder, 'guides.png');
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('is read from its path; every painted guide is found and none invented', async () => {
    const { picture, dpi, guides } = paintScan({
      seed: 11,
      guides: 2,
      dpi: 400,
      widthMm: 70,
      heightMm: 50,
      clutter: false,
    });
    const { width, height, rgb: data } = picture;
    writeFileSync(image, encode({ width, height, data, channels: 3, depth: 8 }));
    const answer = JSON.parse(JSON.stringify(await answerRequest({ op: 'scan', image, dpi })));
    expect(answerShape('scan').safeParse(answer).error).toBeUndefined();
    expect(answer.guides).toHaveLength(guides.length);
  }, 30_000);
  it.each([
    ['a resolution no scanner has', { dpi: 3 }, /dpi|resolution/],
    ['a file that is not there', { image: join(folder, 'none.png') }, /cannot be read/],
  ])('%s is refused with the reason', async (_, change, message) => {
    const answer = (await answerRequest({ op: 'scan', image, dpi: 600, ...change })) as Json & {
      findings: { message: string }[];
    };
    expect(answer.status).toBe('refused');
    expect(answer.findings[0].message).toMatch(message);
  });
});
