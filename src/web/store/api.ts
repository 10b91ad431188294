import type {
  AppendAnswer,
  AttachmentAnswer,
  CreateRequest,
  DemoOffered,
  DocumentAnswer,
  DocumentList,
  DocumentSummary,
  ImportAnswer,
  OpeningAnswer,
  OperationsAnswer,
  ProofsAnswer,
  Refusal,
  Revision,
  ServerInfo,
} from '../../record/api.ts';
import type { Objection, Operation } from '../../record/operation.ts';
import type {
  BackupNote,
  JobStatus,
  RecordStanding,
  RepairAnswer,
  ShopImportAnswer,
  ShopImportStanding,
  WorkNote,
} from '../../record/record-api.ts';
import type { SharedSession, SharingAnswer } from '../../record/sharing-api.ts';
import { sendFile } from './send-file.ts';

/** The server answered no, or did not answer (`status` 0). */
export class ApiError extends Error {
  readonly status: number;
  readonly findings: Objection[];
  constructor(status: number, message: string, findings: Objection[] = []) {
    super(message);
    this.status = status;
    this.findings = findings;
  }
}

export type Api = ReturnType<typeof createApi>;

/** The server's routes as functions; each throws an ApiError when the answer is not the one asked for. */
export function createApi(fetcher: typeof fetch, base = '') {
  const asking = askingOf(fetcher, base);
  return { ...documentRoutes(asking, base), ...shopRoutes(asking, base), ...deviceRoutes(asking) };
}

type Asking = ReturnType<typeof askingOf>;

function askingOf(fetcher: typeof fetch, base: string) {
  async function ask<T>(
    method: string,
    path: string,
    body?: BodyInit,
    type?: string,
    waitMs = longestAnswerMs,
  ): Promise<T> {
    const headers = type ? { 'content-type': type } : undefined;
    const signal = AbortSignal.timeout(waitMs);
    const response = await fetcher(`${base}/api${path}`, { method, body, headers, signal }).catch(() => {
      throw new ApiError(0, 'The server cannot be reached');
    });
    if (!response.ok) throw await refusalOf(response);
    return (await response.json()) as T;
  }
  const get = <T>(path: string) => ask<T>('GET', path);
  const post = <T>(path: string, body: unknown = {}) =>
    ask<T>('POST', path, JSON.stringify(body), 'application/json');
  /** Its progress is shown meanwhile, and it can be called off. */
  const longWork = <T>(path: string, body: Blob | string = '{}') =>
    ask<T>('POST', path, body, 'application/json', longestWorkMs);
  return { ask, get, post, longWork };
}

function documentRoutes({ ask, get, post, longWork }: Asking, base: string) {
  const doc = (id: string) => `/documents/${encodeURIComponent(id)}`;
  return {
    listDocuments: (
      query: {
        kind?: 'build' | 'ticket';
        search?: string;
        series?: string;
        gone?: boolean;
        limit?: number;
        offset?: number;
      } = {},
    ) => get<DocumentList>(`/documents?${queryText(query)}`),
    createBuild: (changes: CreateRequest['changes'] = []) =>
      post<DocumentSummary>('/documents', { kind: 'build', changes }),
    createTicket: (changes: CreateRequest['changes'] = []) =>
      post<DocumentSummary>('/documents', { kind: 'ticket', changes }),
    /** A document as it stands, without its history. */
    document: (id: string) => get<DocumentAnswer>(doc(id)),
    /** Its newest operations, and what those before them come down to. */
    opening: (id: string) => get<OpeningAnswer>(`${doc(id)}/opening`),
    operationsAfter: (id: string, after: number, limit?: number) =>
      get<OperationsAnswer>(`${doc(id)}/operations?${queryText({ after, limit })}`),
    /** As its first operations left it. */
    documentAfter: (id: string, seq: number) => get<DocumentAnswer>(`${doc(id)}/after/${seq}`),
    append: (id: string, operations: readonly Operation[]) =>
      post<AppendAnswer>(`${doc(id)}/operations`, { operations }),
    copy: (id: string) => post<DocumentSummary>(`${doc(id)}/copy`),
    again: (id: string) => post<DocumentSummary>(`${doc(id)}/again`),
    /** For good: out of the history as well. */
    eraseCustomer: (id: string) => post<DocumentSummary>(`${doc(id)}/erase`, { what: 'customer' }),
    erasePicture: (id: string, row: string) =>
      post<DocumentSummary>(`${doc(id)}/erase`, { what: 'picture', row }),
    putAway: (id: string) => post<DocumentSummary>(`${doc(id)}/put-away`),
    bringBack: (id: string) => post<DocumentSummary>(`${doc(id)}/bring-back`),
    /** Address of the build file, for a download link. */
    fileAddress: (id: string) => `${base}/api${doc(id)}/file`,
    importFile: (file: Blob | string) => longWork<ImportAnswer>('/files', file),
    freezeRevision: (id: string, engineVersion: string) =>
      post<Revision>(`${doc(id)}/revisions`, { engineVersion }),
    /** The server finds the type out from the bytes themselves. */
    addAttachment: (bytes: Blob) =>
      ask<AttachmentAnswer>('POST', '/attachments', bytes, 'application/octet-stream'),
    attachmentAddress: (hash: string) => `${base}/api/attachments/${hash}`,
    demos: () => get<{ demos: DemoOffered[] }>('/demos'),
    /** Puts a demo on the shelf, or brings it back to what it was. */
    showDemo: (id: string) => post<DocumentSummary>(`/demos/${encodeURIComponent(id)}`),
  };
}

/** The whole shop, and work on all of its record. */
function shopRoutes({ get, post, longWork }: Asking, base: string) {
  return {
    /** The whole shop as plain files in one archive, for a download link. */
    shopFilesAddress: () => `${base}/api/shop/files`,
    shopImport: () => get<ShopImportStanding>('/shop/import'),
    /** An archive of a whole shop; `onSent` hears how many bytes have gone. */
    async importShop(file: Blob, onSent: (bytes: number) => void): Promise<ShopImportAnswer> {
      const { status, text } = await sendFile(`${base}/api/shop/import`, file, onSent);
      if (status === 0) throw new ApiError(0, 'The server cannot be reached');
      if (status >= 300) throw await refusalOf(new Response(text, { status }));
      return JSON.parse(text) as ShopImportAnswer;
    },
    shop: () => get<DocumentSummary>('/shop'),
    backups: () => get<{ backups: BackupNote[] }>('/backups'),
    makeBackup: () => longWork<BackupNote>('/backups'),
    restoreBackup: (name: string) =>
      longWork<{ madeAt: string; keptAs: string | null; otherwise: string[] }>(
        `/backups/${encodeURIComponent(name)}/restore`,
      ),
    record: () => get<RecordStanding>('/record'),
    repairRecord: () => longWork<RepairAnswer>('/record/repair'),
    checkRecord: () => longWork<RecordStanding>('/record/check'),
    /** Imports, exports, backups and readings that go on. */
    works: () => get<{ works: WorkNote[] }>('/works'),
    cancelWork: (id: string) => post<{ works: WorkNote[] }>(`/works/${id}/cancel`),
    cancelShopImport: () => post<ShopImportStanding>('/shop/import/cancel'),
    proofs: () => get<ProofsAnswer>('/proofs'),
    startJob: (kind: string, input: unknown = {}) => post<JobStatus>('/jobs', { kind, input }),
    jobs: () => get<{ jobs: JobStatus[] }>('/jobs'),
    job: (id: string) => get<JobStatus>(`/jobs/${id}`),
    cancelJob: (id: string) => post<JobStatus>(`/jobs/${id}/cancel`),
    backupAddress: (name: string) => `${base}/api/backups/${name}`,
  };
}

function deviceRoutes({ get, post }: Asking) {
  return {
    sharing: () => get<SharingAnswer>('/sharing'),
    letPhonesIn: (open: boolean) => post<SharingAnswer>('/sharing/open', { open }),
    makePairingCode: () => post<{ code: string; expiresAt: string }>('/sharing/code'),
    endSession: (id: string) => post<{ sessions: SharedSession[] }>(`/sharing/sessions/${id}/end`),
    pair: (code: string, name: string) => post<{ paired: boolean }>('/pair', { code, name }),
    info: () => get<ServerInfo>('/info'),
    /** Ends the program. */
    end: () => post<{ ending: boolean }>('/end'),
  };
}

/** A connection that died without a word is given up after this; large files are on the same machine or network. */
const longestAnswerMs = 60_000;
const longestWorkMs = 4 * 3600_000;

function queryText(query: Record<string, string | number | boolean | undefined>): string {
  const given = Object.entries(query).filter(([, value]) => value !== undefined);
  return new URLSearchParams(given.map(([key, value]) => [key, String(value)])).toString();
}

async function refusalOf(response: Response): Promise<ApiError> {
  const refusal = (await response.json().catch(() => ({}))) as Partial<Refusal>;
  const message = refusal.message ?? `The server answered ${response.status}`;
  return new ApiError(response.status, message, refusal.findings ?? []);
}
