import { BackupRefused } from '../backup/archive.ts';
import { DatabaseTrouble, type TroubleKind } from '../database-trouble.ts';
import { ConflictError } from '../errors.ts';
import { ShopRefused } from '../shop-files/read-shop.ts';

/** An error as it passes between threads, which keep no classes. */
export interface ErrorData {
  name: string;
  message: string;
  kind?: TroubleKind;
  code?: unknown;
  stack?: string;
}

const plain = { BackupRefused, ShopRefused, ConflictError };

export function errorAsData(error: unknown): ErrorData {
  if (error instanceof DatabaseTrouble)
    return { name: 'DatabaseTrouble', message: error.message, kind: error.kind };
  const { message, stack, code } = error as Error & { code?: unknown };
  const known = Object.entries(plain).find(([, kind]) => error instanceof kind);
  return { name: known?.[0] ?? 'Error', message: String(message), code, stack };
}

export function errorFromData({ name, message, kind, code, stack }: ErrorData): Error {
  if (kind) return DatabaseTrouble.said(kind, message);
  if (Object.hasOwn(plain, name)) return new plain[name as keyof typeof plain](message);
  return Object.assign(new Error(message), { code, stack });
}
