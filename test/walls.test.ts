import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

/**
 * What each part must not know. The compiler keeps the large walls (each folder of src compiles against the
 * folders it references, the engine against nothing); this keeps the order inside the engine and the rest.
 */
const root = fileURLToPath(new URL('../', import.meta.url));

interface Import {
  from: string;
  /** A file under src as 'src/…', or a package's name. */
  to: string;
  typeOnly: boolean;
}

const files = filesUnder('src').filter((file) => /\.tsx?$/.test(file) && !/\.(test|d)\.tsx?$/.test(file));
const imports = files.flatMap(importsOf);

/** The order of the craft: a folder may import from those before it, never from those after. */
const engineOrder = [
  'finding.ts',
  'numerics',
  'units',
  'wall-mark',
  'kinds',
  'bench',
  'bend',
  'spool',
  'space',
  'torsion',
  'rotation',
  'frequency',
  'stiffness',
  'series',
  'layout',
  'sureness',
  'line',
  'load-test',
  'handle',
  'guides',
  'wraps',
  'finish',
  'repair',
  'quote',
  'delivery',
  'plan',
  'marks',
  'flow',
  'flow.ts',
];

describe('the engine', () => {
  const within = imports.filter(({ from }) => from.startsWith('src/engine/'));

  test('imports nothing from outside itself: it runs unchanged in a worker and in Node', () => {
    expectNone(
      within.filter(({ to }) => !to.startsWith('src/engine/')),
      'the engine takes plain values and gives plain values; files, clocks, packages and the page belong to its callers',
    );
  });

  test('numerics knows no craft', () => {
    expectNone(
      within.filter(({ from, to }) => part(from) === 'numerics' && part(to) !== 'numerics'),
      'numerics is pure mathematics; move what needs craft words into the folder of that step',
    );
  });

  test('steps import earlier steps only', () => {
    const unknown = files.filter((file) => file.startsWith('src/engine/') && place(file) < 0);
    expect(unknown, 'add the new folder to engineOrder, where it stands in the craft').toEqual([]);
    expectNone(
      within.filter(({ from, to }) => to.startsWith('src/engine/') && place(to) > place(from)),
      `the order is ${engineOrder.join(' < ')}; what needs both steps belongs to the later one, or to flow`,
    );
  });

  test('has no clock and no chance of its own: same input, same output', () => {
    const impure = /\b(Date\.now|new Date|Math\.random|performance\.|setTimeout|process\.|console\.|fetch\()/;
    const found = files.filter((file) => file.startsWith('src/engine/') && impure.test(codeOf(file)));
    expect(found, 'pass the instant or the seed in').toEqual([]);
  });
});

describe('the folders of src', () => {
  test('have no circle of imports', () => {
    const circle = findCircle(imports);
    expect(circle.join(' -> '), 'types count: move what both need into a file that imports neither').toBe('');
  });

  test('only the server knows SQL and databases', () => {
    const databases = ['kysely', 'kysely/migration', 'pg', 'node:sqlite'];
    expectNone(
      imports.filter(({ from, to }) => databases.includes(to) && !from.startsWith('src/server/')),
      'ask the server, through src/record/api.ts',
    );
  });

  test('what runs in the browser uses nothing of Node', () => {
    const inBrowser = /^src\/(engine|record|words|sheets|image|paper|web)\//;
    expectNone(
      imports.filter(({ from, to }) => inBrowser.test(from) && to.startsWith('node:')),
      'the page has no Node; pass in what is needed from there',
    );
  });

  test('the page does not reach into the server, the door or the command line', () => {
    expectNone(
      imports.filter(({ from, to }) => from.startsWith('src/web/') && /^src\/(server|door|cli)\//.test(to)),
      'the page talks to the server over HTTP; shapes both need are in src/record/api.ts',
    );
  });

  test('the store knows no framework', () => {
    expectNone(
      imports.filter(({ from, to }) => from.startsWith('src/web/store/') && /^react/.test(to)),
      'the store is plain TypeScript that React subscribes to',
    );
  });
});

/** The web's floors from the ground up: a floor uses those below it, never those above. */
const floors = [
  'style',
  'offline',
  'worker',
  'store',
  'read',
  'fields',
  'parts',
  'steps',
  'app',
  'main.tsx',
  'index.ts',
];

describe('the floors of the web', () => {
  const within = imports.filter(({ from, to }) => from.startsWith('src/web/') && to.startsWith('src/web/'));
  const floor = (file: string) => floors.indexOf(part(file));

  test('arrows run down only', () => {
    const unknown = files.filter((file) => file.startsWith('src/web/') && floor(file) < 0);
    expect(unknown, 'a file of the web stands on one of its floors').toEqual([]);
    expectNone(
      within.filter(({ from, to }) => floor(to) > floor(from)),
      `the floors are ${floors.join(' < ')}; what two steps need belongs to parts, fields or read`,
    );
  });

  test('the store and the worker do not know each other', () => {
    const apart = ['store', 'worker'];
    expectNone(
      within.filter(
        ({ from, to }) => apart.includes(part(from)) && apart.includes(part(to)) && part(from) !== part(to),
      ),
      'one keeps the record, the other hosts the engine; read brings them together',
    );
  });

  test('no step looks into another', () => {
    const step = (file: string) => (part(file) === 'steps' ? file.split('/')[3] : undefined);
    expectNone(
      within.filter(({ from, to }) => step(from) && step(to) && step(from) !== step(to)),
      'what two steps show belongs to parts',
    );
  });
});

function expectNone(found: readonly Import[], why: string): void {
  expect(found.map(({ from, to }) => `${from} imports ${to}`).sort(), why).toEqual([]);
}

/** 'src/engine/bend/mesh.ts' is of 'bend'. */
function part(file: string): string {
  return file.split('/')[2] ?? '';
}

function place(file: string): number {
  return engineOrder.indexOf(part(file));
}

function filesUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'));
}

function codeOf(file: string): string {
  const text = readFileSync(join(root, file), 'utf8');
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\/\/.*$/gm, '');
}

function importsOf(file: string): Import[] {
  const statement =
    /\b(?:import|export)\s+(type\s)?(?:[^'";]*?\sfrom\s+)?'([^']+)'|\bimport\(\s*'([^']+)'\s*\)/g;
  return [...codeOf(file).matchAll(statement)].map(([, type, named, dynamic]) => {
    const target = named ?? dynamic;
    const to = target.startsWith('.') ? posix.join(dirname(file), target) : target;
    return { from: file, to, typeOnly: type !== undefined };
  });
}

/** Files that import each other in a circle, or none. */
function findCircle(edges: readonly Import[]): string[] {
  const next = new Map<string, string[]>();
  for (const { from, to } of edges) next.set(from, [...(next.get(from) ?? []), to]);
  const done = new Set<string>();
  const walk = (file: string, trail: readonly string[]): string[] => {
    if (trail.includes(file)) return [...trail.slice(trail.indexOf(file)), file];
    if (done.has(file)) return [];
    for (const to of next.get(file) ?? []) {
      const circle = walk(to, [...trail, file]);
      if (circle.length > 0) return circle;
    }
    done.add(file);
    return [];
  };
  for (const file of next.keys()) {
    const circle = walk(file, []);
    if (circle.length > 0) return circle;
  }
  return [];
}

test('a circle is found where there is one', () => {
  const edge = (from: string, to: string) => ({ from, to, typeOnly: false });
  expect(findCircle([edge('a', 'b'), edge('b', 'c'), edge('c', 'b')])).toEqual(['b', 'c', 'b']);
  expect(findCircle([edge('a', 'b'), edge('a', 'c'), edge('b', 'c')])).toEqual([]);
});

test('the reader of imports sees the forms there are', () => {
  expect(imports.length).toBeGreaterThan(100);
  expect(imports).toContainEqual({
    from: 'src/record/document.ts',
    to: 'src/record/operation.ts',
    typeOnly: false,
  });
  expect(imports).toContainEqual({
    from: 'src/record/document.ts',
    to: 'src/record/schema.ts',
    typeOnly: true,
  });
});
