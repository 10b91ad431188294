import { type Certificate, shopCertificate } from './certificate.ts';
import { lanAddresses, ownNames } from './own-names.ts';
import { Pairing } from './pairing.ts';

export interface EntranceOptions {
  host?: string;
  share?: boolean;
  tls?: boolean;
  proxyOrigin?: string;
}

/** How the server is reached, and by whom. */
export interface Entrance {
  host: string;
  ports: { plain: number; tls: number };
  certificate?: Certificate;
  /** Undefined when not shared. */
  pairing?: Pairing;
  /** Where other devices find it. */
  addresses(): string[];
  allowedHost(name: string): boolean;
  proxyOrigin?: string;
  secure: boolean;
}

export async function entranceOf(options: EntranceOptions, folder: string): Promise<Entrance> {
  const { share = false, proxyOrigin, tls = false } = options;
  const host = options.host ?? (share && !proxyOrigin && !tls ? '0.0.0.0' : '127.0.0.1');
  const ports = { plain: 0, tls: 0 };
  const names = ownNames(host, share);
  const bare = names.map((name) => name.replace(/^\[|\]$/g, ''));
  const certificate = share && tls ? await shopCertificate(folder, bare, new Date()) : undefined;
  const addresses = () => {
    if (proxyOrigin) return [proxyOrigin];
    return lanAddresses().map((name) =>
      certificate ? `https://${name}:${ports.tls}` : `http://${name}:${ports.plain}`,
    );
  };
  const allowedHost = (name: string) =>
    ownNames(host, share).some(
      (own) =>
        name === `${own}:${ports.plain}` || (certificate !== undefined && name === `${own}:${ports.tls}`),
    );
  const secure = certificate !== undefined || (proxyOrigin?.startsWith('https:') ?? false);
  const pairing = share ? new Pairing(() => new Date()) : undefined;
  return { host, ports, certificate, pairing, addresses, allowedHost, proxyOrigin, secure };
}
