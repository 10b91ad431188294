import { type Certificate, shopCertificate } from './certificate.ts';
import { lanAddresses, ownNames } from './own-names.ts';
import { Pairing } from './pairing.ts';

export interface EntranceOptions {
  host?: string;
  share?: boolean;
  tls?: boolean;
  proxyOrigin?: string;
}

/** How the server is reached, and by whom. Phones may be let in, and shut out again, while it runs. */
export class Entrance {
  readonly host: string;
  /** As asked for at the start. */
  private readonly given?: string;
  readonly ports = { plain: 0, tls: 0 };
  readonly pairing = new Pairing(() => new Date());
  readonly proxyOrigin?: string;
  /** Other devices are let in by plain http or through a proxy: so the program was started. */
  private readonly openFromStart: boolean;
  private readonly folder: string;
  /** Of https, for as long as it is spoken. */
  certificate?: Certificate;

  constructor({ host, share = false, tls = false, proxyOrigin }: EntranceOptions, folder: string) {
    this.openFromStart = share && !tls;
    this.given = host;
    this.host = host ?? (this.openFromStart && !proxyOrigin ? '0.0.0.0' : '127.0.0.1');
    this.proxyOrigin = proxyOrigin;
    this.folder = folder;
  }

  /** Whether paired devices are let in. */
  get open(): boolean {
    return this.openFromStart || this.certificate !== undefined;
  }

  /** A switch can open and shut it. */
  get switchable(): boolean {
    return !this.openFromStart;
  }

  /** What other devices send travels by https only: our own or a proxy's. */
  get secure(): boolean {
    return this.certificate !== undefined || (this.proxyOrigin?.startsWith('https:') ?? false);
  }

  /** The certificate of this shop, for the names this computer has now. */
  makeCertificate(): Promise<Certificate> {
    const names = ownNames(this.host, true).map((name) => name.replace(/^\[|\]$/g, ''));
    return shopCertificate(this.folder, names, new Date());
  }

  /** Where other devices find it. */
  readonly addresses = (): string[] => {
    if (!this.open) return [];
    if (this.proxyOrigin) return [this.proxyOrigin];
    const origin = this.certificate
      ? (name: string) => `https://${name}:${this.ports.tls}`
      : (name: string) => `http://${name}:${this.ports.plain}`;
    return this.reached().map(origin);
  };

  /** Where one address alone is listened on, no other is told. */
  private reached(): string[] {
    const { given } = this;
    if (given === undefined || given === '0.0.0.0' || given === '::') return lanAddresses();
    return ownNames('::', false).includes(given) || given === '::1' ? [] : [given];
  }

  readonly allowedHost = (name: string): boolean => {
    const ports = this.certificate ? [this.ports.plain, this.ports.tls] : [this.ports.plain];
    return ownNames(this.host, this.open).some((own) => ports.some((port) => name === `${own}:${port}`));
  };
}
