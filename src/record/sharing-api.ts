/** Answers of the server about other devices of the shop. */

export interface PairRequest {
  code: string;
  /** What the builder calls the device. */
  name: string;
}

export interface SharedSession {
  id: string;
  name: string;
  pairedAt: string;
}

export interface SharingAnswer {
  /** Paired devices are let in. */
  shared: boolean;
  /** Settings can switch that; not where it was said at the start. */
  switchable: boolean;
  /** Where other devices find this server, such as http://192.168.1.5:4870. */
  addresses: string[];
  sessions: SharedSession[];
  /** SHA-256 of the certificate made for this shop; absent without one. */
  fingerprint?: string;
}
