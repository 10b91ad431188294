import type { z } from 'zod';
import type { SaidFinding } from './refusal.ts';

type Issue = z.core.$ZodIssue;

/** A shape's complaint in words: the field, its value and what it takes. `request` is the whole line. */
export function issueFinding(issue: Issue, request: unknown): SaidFinding {
  if (issue.code === 'unrecognized_keys') return unknownKeys(issue.path, issue.keys);
  const inner = issue.code === 'invalid_union' ? deepest(issue) : undefined;
  if (inner) return issueFinding({ ...inner, path: [...issue.path, ...inner.path] }, request);
  const path = pathWords(issue.path);
  const value = valueAt(request, issue.path);
  if (issue.code === 'custom') {
    const plain = typeof value === 'number' || typeof value === 'string';
    return { path, message: `${path} ${plain ? `is ${show(value)}: it ` : ''}${issue.message}` };
  }
  return { path, message: `${path || 'the request'} is ${show(value)}; give ${wanted(issue)}` };
}

/** `rod.stiffness[3].EINm2`. */
function pathWords(path: readonly PropertyKey[]): string {
  return path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`))
    .join('')
    .replace(/^\./, '');
}

function unknownKeys(path: readonly PropertyKey[], keys: readonly string[]): SaidFinding {
  const names = keys.map((key) => `"${key.slice(0, 60)}"`).join(', ');
  const where = path.length === 0 ? 'the request' : pathWords(path);
  const message = `${where} has ${names}, which is not known here; leave it out, or look for a slip in its name or unit`;
  return { path: pathWords([...path, keys[0]]), message };
}

/** Of a union, the complaints of the branch that got furthest. */
function deepest(issue: Extract<Issue, { code: 'invalid_union' }>): Issue | undefined {
  const branches = issue.errors.filter((branch) => branch.length > 0);
  const depth = (branch: readonly Issue[]) => Math.max(...branch.map(({ path }) => path.length));
  return branches.sort((a, b) => depth(b) - depth(a))[0]?.[0];
}

const typeWords: Record<string, string> = { object: 'an object', array: 'a list', int: 'a whole number' };

function wanted(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return typeWords[issue.expected] ?? `a ${issue.expected}`;
    case 'too_small': {
      const least = `${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`;
      return issue.origin === 'array' ? `${least} entries` : least;
    }
    case 'too_big': {
      const most = `${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`;
      return issue.origin === 'array' ? `${most} entries` : most;
    }
    case 'invalid_value':
      return issue.values.map((value) => JSON.stringify(value)).join(' or ');
    default:
      return issue.message;
  }
}

function valueAt(request: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, step) =>
      value === null || typeof value !== 'object' ? undefined : (value as Record<PropertyKey, unknown>)[step],
    request,
  );
}

function show(value: unknown): string {
  if (value === undefined) return 'missing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (value !== null && typeof value === 'object') return 'an object';
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 60)}…` : text;
}
