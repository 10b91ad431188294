import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { createServer as createTlsServer } from 'node:https';
import { join } from 'node:path';
import { createAdaptorServer } from '@hono/node-server';
import { closeServer, firstTlsPort, listen } from '../listen.ts';
import type { Entrance } from './entrance.ts';

export interface PhoneDoorParts {
  entrance: Entrance;
  /** Data folder, where it stands that the door is to be open. */
  folder: string;
  fetch: Parameters<typeof createAdaptorServer>[0]['fetch'];
  /** Address to listen on; every one of this computer unless said otherwise. */
  host?: string;
  /** Exactly this port; otherwise the usual one, or the next free. */
  port?: number;
}

/** The way in for phones, by https: opened and shut while the server runs, and as it was at the next start. */
export class PhoneDoor {
  private readonly parts: PhoneDoorParts;
  private readonly note: string;
  private server: Server | undefined;
  /** One after the other: a switch may be pressed twice. */
  private turning: Promise<void> = Promise.resolve();

  constructor(parts: PhoneDoorParts) {
    this.parts = parts;
    this.note = join(parts.folder, 'phones-let-in');
  }

  /** Whether it was left open. */
  get leftOpen(): boolean {
    try {
      return readFileSync(this.note, 'utf8') === 'yes\n';
    } catch {
      return false;
    }
  }

  /** @throws PortTaken */
  turn(open: boolean): Promise<void> {
    const turned = this.turning.then(() => (open ? this.open() : this.close()));
    this.turning = turned.catch(() => undefined);
    return turned;
  }

  /** By the switch: it holds for the next start too. */
  async leave(open: boolean): Promise<void> {
    await this.turn(open);
    if (open) writeFileSync(this.note, 'yes\n', { mode: 0o600 });
    else rmSync(this.note, { force: true });
  }

  private async open(): Promise<void> {
    if (this.server) return;
    const { entrance, fetch, host = '0.0.0.0', port } = this.parts;
    const certificate = await entrance.makeCertificate();
    const serverOptions = { key: certificate.keyPem, cert: certificate.certificatePem };
    const server = createAdaptorServer({ fetch, createServer: createTlsServer, serverOptions }) as Server;
    entrance.ports.tls = await listen(server, host, port, firstTlsPort);
    entrance.certificate = certificate;
    this.server = server;
  }

  private async close(): Promise<void> {
    const { server } = this;
    this.server = undefined;
    this.parts.entrance.certificate = undefined;
    if (server) await closeServer(server);
  }
}
