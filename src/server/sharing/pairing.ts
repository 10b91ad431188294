import { createHash, randomBytes, randomInt, timingSafeEqual } from 'node:crypto';

/** Letters and digits nobody mistakes for one another. */
const alphabet = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
const codeLetters = 6;
/** A code ends by its use, by its age, or by this many wrong tries; only this computer makes another. */
export const codeLivesMs = 10 * 60_000;
export const wrongTries = 5;

export interface PairingCode {
  code: string;
  expiresAt: string;
}

/** Where codes are made and used up. */
export interface PairingCodes {
  makeCode(): PairingCode | Promise<PairingCode>;
  /** Uses the code up when it is right. A wrong, a used, an old and no code are one answer. */
  accept(typed: string): boolean | Promise<boolean>;
}

export function makeLetters(): string {
  return Array.from({ length: codeLetters }, () => alphabet[randomInt(alphabet.length)]).join('');
}

/** Of a code however it was typed. */
export function codeHash(typed: string): string {
  return digest(typed.toUpperCase().replace(/[\s-]/g, '')).toString('hex');
}

/** The one code that lets the next device in. At 30^6 codes, five tries find it with a chance of 7 in 10^9. */
export class Pairing implements PairingCodes {
  private readonly now: () => Date;
  private standing: { code: string; endsMs: number; triesLeft: number } | undefined;

  constructor(now: () => Date) {
    this.now = now;
  }

  /** A new code; the one before ends. */
  makeCode(): PairingCode {
    const code = makeLetters();
    const endsMs = this.now().getTime() + codeLivesMs;
    this.standing = { code, endsMs, triesLeft: wrongTries };
    return { code, expiresAt: new Date(endsMs).toISOString() };
  }

  accept(typed: string): boolean {
    const { standing } = this;
    if (!standing || this.now().getTime() >= standing.endsMs) {
      this.standing = undefined;
      return false;
    }
    const right = timingSafeEqual(Buffer.from(codeHash(typed)), Buffer.from(codeHash(standing.code)));
    standing.triesLeft -= 1;
    if (right || standing.triesLeft === 0) this.standing = undefined;
    return right;
  }
}

/** A session's secret: 256 random bits; only its hash is kept. */
export function newToken(): string {
  return randomBytes(32).toString('base64url');
}

export function tokenHash(token: string): string {
  return digest(token).toString('hex');
}

function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}
