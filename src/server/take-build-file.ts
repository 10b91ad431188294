import type { RevisionAnswer } from '../record/api.ts';
import { allRows, applyOperations, emptyDocument } from '../record/document.ts';
import { readBuildFile } from '../record/file-read.ts';
import type { FileAttachment } from '../record/file-shape.ts';
import type { DocumentState, Objection, Operation } from '../record/operation.ts';
import type { FieldValue } from '../record/schema.ts';
import { type BareAttachment, bareAttachment, hashOf } from './bare-attachment.ts';
import { RefusedError } from './errors.ts';
import { frozenStates } from './freeze.ts';

/** What a build file brings, checked and ready to be stored; plain values that pass between threads. */
export interface TakenBuild {
  /** Operations as JSON, some hundred each: texts pass between threads at no cost, and are read one by one. */
  pieces: string[];
  revisions: RevisionAnswer[];
  attachments: BareAttachment[];
  /** Attachments its values name. */
  hashes: string[];
  notes: string[];
}

const operationsPerPiece = 500;

/** @param id of the build to be, @param at now */
export function takeBuildFile(text: string, id: string, at: string): TakenBuild | { findings: Objection[] } {
  const result = readBuildFile(text, at);
  if (result.status === 'refused') return { findings: result.findings };
  const { revisions, attachments, notes } = result.build;
  const held = attachments.map(takenIn);
  const findings = held.flatMap((entry) => ('message' in entry ? [entry] : []));
  if (findings.length > 0) return { findings };
  const bare = held as Held[];
  const renamed = new Map(bare.map(({ named, attachment }) => [named, attachment.hash]));
  const stripped = bare.filter(({ named, attachment }) => named !== attachment.hash).length;
  const operations = result.build.operations.map((operation) => withHashes(operation, renamed));
  const empty = emptyDocument(id, 'build');
  return {
    pieces: piecesOf(operations),
    revisions: frozenStates(empty, operations, revisions),
    attachments: bare.map(({ attachment }) => attachment),
    hashes: attachmentHashes(applyOperations(empty, operations)),
    notes: stripped > 0 ? [...notes, strippedWords(stripped)] : notes,
  };
}

interface Held {
  /** Its hash in the file. */
  named: string;
  attachment: BareAttachment;
}

function piecesOf(operations: readonly Operation[]): string[] {
  const pieces: string[] = [];
  for (let start = 0; start < operations.length; start += operationsPerPiece)
    pieces.push(JSON.stringify(operations.slice(start, start + operationsPerPiece)));
  return pieces;
}

function strippedWords(count: number): string {
  const pictures = count === 1 ? 'One picture' : `${count} pictures`;
  return `${pictures} told where, when or with what it was taken. That was taken out; the picture itself is the same`;
}

/** A picture that was changed on its way in has another name; the changes that name it follow. */
export function withHashes<T extends Operation>(operation: T, renamed: ReadonlyMap<string, string>): T {
  const follow = (value: FieldValue) => (typeof value === 'string' ? (renamed.get(value) ?? value) : value);
  return { ...operation, old: follow(operation.old), value: follow(operation.value) };
}

function takenIn({ hash, base64 }: FileAttachment, index: number): Held | Objection {
  const path = `attachments/${index}`;
  const bytes = new Uint8Array(Buffer.from(base64, 'base64'));
  if (hashOf(bytes) !== hash)
    return { path, message: `Attachment ${index + 1} is not what its hash says. Export the file again` };
  try {
    return { named: hash, attachment: bareAttachment(bytes, path) };
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    return { path, message: `Attachment ${index + 1}: ${error.message}` };
  }
}

export function attachmentHashes(state: DocumentState): string[] {
  const named = allRows(state, 'attachments').map((row) => row.fields.content);
  return [...new Set(named.filter((hash) => typeof hash === 'string'))];
}
