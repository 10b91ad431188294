import { X509Certificate } from 'node:crypto';
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { join } from 'node:path';

/** The shop's own certificate, which nobody vouches for but its fingerprint. */
export interface Certificate {
  keyPem: string;
  certificatePem: string;
  /** SHA-256, as browsers show it: pairs of hex digits with colons between. */
  fingerprint: string;
}

/** Apple's devices take no certificate that holds longer than 825 days. */
const holdsDays = 800;
const renewDaysBefore = 30;
const dayMs = 24 * 3600 * 1000;

/**
 * The certificate of a data folder, made where there is none, where it ends soon, or where a name of this computer
 * is not in it: every device must then be told once more. The key is readable by the account alone.
 */
export async function shopCertificate(
  dataFolder: string,
  names: readonly string[],
  now: Date,
): Promise<Certificate> {
  const file = join(dataFolder, 'certificate.pem');
  const standing = readCertificate(file);
  if (standing && serves(standing.certificatePem, names, now)) return standing;
  const made = await makeCertificate(names, now);
  writeFileSync(`${file}.part`, made.certificatePem + made.keyPem, { mode: 0o600 });
  renameSync(`${file}.part`, file);
  return made;
}

/** A file that is missing or makes no sense is no certificate. */
function readCertificate(file: string): Certificate | undefined {
  try {
    const text = readFileSync(file, 'utf8');
    const [certificatePem, keyPem] = [pemBlock(text, 'CERTIFICATE'), pemBlock(text, 'PRIVATE KEY')];
    return { certificatePem, keyPem, fingerprint: new X509Certificate(certificatePem).fingerprint256 };
  } catch {
    return undefined;
  }
}

function pemBlock(text: string, kind: string): string {
  const [block] = new RegExp(`-----BEGIN ${kind}-----[^-]*-----END ${kind}-----\\s*`).exec(text) ?? [];
  if (!block) throw new Error(`There is no ${kind}`);
  return block;
}

function serves(certificatePem: string, names: readonly string[], now: Date): boolean {
  const certificate = new X509Certificate(certificatePem);
  const ends = Date.parse(certificate.validTo) - renewDaysBefore * dayMs;
  const named = names.every((name) => (isIP(name) ? certificate.checkIP(name) : certificate.checkHost(name)));
  return now.getTime() < ends && named;
}

/** The library is loaded only where a certificate is wanted. */
async function makeCertificate(names: readonly string[], now: Date): Promise<Certificate> {
  const { generate } = await import('selfsigned');
  const altNames = names.map((name) =>
    isIP(name) ? { type: 7 as const, ip: name } : { type: 2 as const, value: name },
  );
  const made = await generate([{ name: 'commonName', value: 'Fairbend in this shop' }], {
    keyType: 'ec',
    curve: 'P-256',
    algorithm: 'sha256',
    // Clocks of phones differ a little.
    notBeforeDate: new Date(now.getTime() - dayMs),
    notAfterDate: new Date(now.getTime() + holdsDays * dayMs),
    extensions: [
      { name: 'basicConstraints', cA: false, critical: true },
      { name: 'keyUsage', digitalSignature: true, critical: true },
      { name: 'extKeyUsage', serverAuth: true },
      { name: 'subjectAltName', altNames },
    ],
  });
  const certificatePem = ensureLineEnd(made.cert);
  return {
    certificatePem,
    keyPem: ensureLineEnd(made.private),
    fingerprint: new X509Certificate(certificatePem).fingerprint256,
  };
}

function ensureLineEnd(text: string): string {
  return text.endsWith('\n') ? text : `${text}\n`;
}
