import { hostname, networkInterfaces } from 'node:os';

/** Addresses of this computer in its networks (IPv4, which a phone can be told). */
export function lanAddresses(): string[] {
  const all = Object.values(networkInterfaces()).flatMap((entries) => entries ?? []);
  return all.filter((entry) => entry.family === 'IPv4' && !entry.internal).map((entry) => entry.address);
}

/** Names a browser may call the server by, without the port. A foreign name pointed here is not among them. */
export function ownNames(host: string, share: boolean): string[] {
  const here = ['127.0.0.1', 'localhost', '[::1]'];
  const name = hostname().toLowerCase();
  const there = share ? [...lanAddresses(), name, `${name.replace(/\.local$/, '')}.local`] : [];
  const given = host === '0.0.0.0' || host === '::' ? [] : [host.includes(':') ? `[${host}]` : host];
  return [...new Set([...here, ...there, ...given])];
}
