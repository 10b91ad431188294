import {
  anyFieldValue,
  describeKind,
  fieldValueSchema,
  remedyFor,
  rowIdPattern,
  siUnit,
} from './field-value.ts';
import type { Objection, Operation, Path } from './operation.ts';
import {
  type DocumentKind,
  documentSchemas,
  type Field,
  type FieldKind,
  type FieldValue,
  type QuantityValue,
} from './schema.ts';
import { z } from './zod.ts';

/** Most operations one request may carry. */
export const largestBatch = 2000;

/** Far beyond any honest count of gestures, far below the largest whole number that can still be counted up. */
const largestClock = 2 ** 48;

/**
 * The check at the door: is this, whatever it is, an operation on a document of this kind? Every finding names
 * the field, the value and the remedy; none means `candidate` is an Operation.
 */
export function validateOperation(kind: DocumentKind, candidate: unknown): Objection[] {
  const envelope = operationShape.safeParse(candidate);
  if (!envelope.success) return envelope.error.issues.slice(0, 5).map(envelopeFinding);
  const operation = envelope.data;
  const findings = validateValue(kind, operation.path, operation.value);
  if (!operation.id.startsWith(`${operation.device}.${operation.clock}.`)) {
    const expected = `${operation.device}.${operation.clock}.<index>`;
    findings.push({
      path: 'id',
      message: `id ${show(operation.id)} does not match its device and clock. Make it ${expected}`,
    });
  }
  return findings;
}

/** Whether `value` may stand at `path`; null (an empty field) may stand at every path there is. */
export function validateValue(kind: DocumentKind, path: Path, value: FieldValue): Objection[] {
  const at = path.join('/');
  const place = findField(kind, path);
  if (typeof place === 'string') return [{ path: at, message: place }];
  if (value === null || validatorOf(place).safeParse(value).success) return [];
  const message = `${capital(place.name)} of ${documentSchemas[kind][path[0]].thing.toLowerCase()} is ${showFor(place, value)}; it takes ${describeKind(place)}. ${remedyFor(place)}`;
  return [{ path: at, message }];
}

/** The field's kind, or what is wrong with the path. */
export function findField(kind: DocumentKind, [collection, row, field]: Path): Field | string {
  const schema = ownValue(documentSchemas[kind], collection);
  if (!schema)
    return `A ${kind} has no collection ${show(collection)}. A newer Fairbend may know it: update this one`;
  if (schema.single && row !== '-')
    return `${collection} has one row, named "-", not ${show(row)}. Write to "-"`;
  if (!schema.single && !rowIdPattern.test(row)) {
    return `Row ${show(row)} of ${collection} is no row id. Use 1 to 40 letters, digits, - and _`;
  }
  return (
    ownValue(schema.fields, field) ??
    `${collection} has no field ${show(field)}. A newer Fairbend may know it: update this one`
  );
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** A quantity as typed, with what was understood: "70" (70 m). */
function showFor(kind: FieldKind, value: FieldValue): string {
  if (kind.kind !== 'quantity' || !isQuantity(value)) return show(value);
  return `${show(value.text)} (${value.si} ${siUnit[kind.dimension]})`;
}

function isQuantity(value: unknown): value is QuantityValue {
  if (value === null || typeof value !== 'object') return false;
  const { si, text } = value as QuantityValue;
  return typeof si === 'number' && typeof text === 'string';
}

/** A value short enough for a message. */
export function show(value: unknown): string {
  const nested = typeof value === 'object' && value !== null && !isQuantity(value);
  const text = nested ? 'a list or object' : (JSON.stringify(value) ?? String(value));
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}

/** Version of the engine that made a result. */
export const engineVersionShape = z.string().regex(/^[\w.+ -]{1,40}$/, 'takes a version such as 1.2.0');

const idText = z.string().regex(/^[A-Za-z0-9_-]{1,60}$/, 'takes 1 to 60 letters, digits, - and _');

export const operationShape: z.ZodType<Operation> = z.strictObject({
  id: z.string().regex(/^[A-Za-z0-9_-]{1,60}\.\d{1,16}\.\d{1,6}$/, 'takes <device>.<clock>.<index>'),
  device: idText,
  clock: z.int('takes a whole number from 1').min(1, 'takes a whole number from 1').max(largestClock),
  gesture: z.string().regex(/^[\w .:-]{1,160}$/, 'takes 1 to 160 letters, digits, spaces and . : _ -'),
  path: z.tuple([z.string().max(60), z.string().max(60), z.string().max(60)]),
  old: anyFieldValue,
  value: anyFieldValue,
  at: z.iso.datetime('takes an instant in UTC such as 2026-03-01T09:30:00Z'),
});

function envelopeFinding(issue: z.core.$ZodIssue): Objection {
  const path = issue.path.join('/') || 'operation';
  return { path, message: `${path} of an operation ${rewordIssue(issue)}` };
}

function rewordIssue(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_format' || issue.code === 'too_small') return issue.message;
  return `does not fit: ${issue.message}. Reload the page so that it and the server are of one version`;
}

const validators = new WeakMap<FieldKind, z.ZodType>();
/** Building a zod schema costs more than using it; each kind's is made once. */
function validatorOf(kind: FieldKind): z.ZodType {
  let validator = validators.get(kind);
  if (!validator) {
    validator = fieldValueSchema(kind);
    validators.set(kind, validator);
  }
  return validator;
}

/** `__proto__` and the like are not fields. */
function ownValue<T>(record: Record<string, T>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
