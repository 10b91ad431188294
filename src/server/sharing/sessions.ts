import type { SharedSession } from '../../record/sharing-api.ts';

/** How long a paired device stays paired. */
export const sessionLivesMs = 30 * 24 * 3600 * 1000;

/** A paired device as it is kept; of its secret only the hash. */
export interface StoredSession {
  id: string;
  name: string;
  pairedAt: string;
  hash: string;
}

/** The devices that were let in. */
export interface Sessions {
  /** Lets a device in; answers its secret, which is not kept. */
  begin(name: string): Promise<string>;
  /** Whether this secret is of a device that is let in. */
  knows(token: string | undefined): Promise<boolean>;
  /** Those that still hold, the first paired first. */
  list(): Promise<SharedSession[]>;
  end(id: string): Promise<void>;
}
