/** Answers of the server about the whole record: taken in, backed up, checked, repaired; and work that goes on for long. */
/** A whole shop being taken in, or whether one can be. */
export interface ShopImportStanding {
  stage: 'none' | 'receiving' | 'reading';
  /** Bytes while it is received, files while it is read; `total` 0 where it is not known. */
  done: number;
  total: number;
  /** Why none can be taken in now, in words for the builder; null where one can. */
  refusal: string | null;
}

/** What was taken in. */
export interface ShopImportAnswer {
  documents: number;
  operations: number;
  attachments: number;
  /** Where the record that stood there before lies now. */
  keptAs: string | null;
}

/** A backup in the data folder. */
export interface BackupNote {
  name: string;
  madeAt: string;
  bytes: number;
  /** Made at the builder's word: never thinned out. */
  byHand: boolean;
  /** Parts of the record were damaged and are left out, or the file itself is not whole any more. */
  damaged: boolean;
}

/** How far the record can be relied on. */
export interface RecordStanding {
  /** When all of it was last read and was what had been stored; null when never. */
  wholeAt: string | null;
  /** How far a reading is that is under way. */
  reading: { done: number; total: number } | null;
  /** What the last reading found not to be what was stored. */
  damaged: DamageNote[];
  /** Changes that were acknowledged and were not there any more at the start. */
  lost: number;
  /** Null where the server makes none itself. */
  backups: {
    /** The newest that is whole. */
    madeAt: string | null;
    /** Of the last attempt. */
    failure: { at: string; message: string } | null;
  } | null;
  /** Bytes taken; null where that cannot be told. */
  space: { record: number; backups: number } | null;
  /** The newest backup, where it holds builds and this record holds none: was it meant to be here? */
  found: { name: string; madeAt: string; builds: number } | null;
}

export interface DamageNote {
  /** Of a document, or a picture's hash. */
  id: string;
  title: string;
  what: string;
}

export interface RepairAnswer {
  /** Brought back, with what of it could not be. */
  mended: DamageNote[];
  /** In no backup, and not in the record any more; the file put aside has what is left of it. */
  leftOut: DamageNote[];
  keptAs: string | null;
}

/** Work on the whole record, or on a long build, that somebody may wait for or call off. */
export type WorkKind =
  | 'backup'
  | 'restore'
  | 'check'
  | 'repair'
  | 'shop out'
  | 'shop in'
  | 'build out'
  | 'build in';

export interface WorkNote {
  id: string;
  kind: WorkKind;
  done: number;
  /** 0 where it is not known. */
  total: number;
}
export interface JobRequest {
  /** Such as "sample shelf". */
  kind: string;
  /** What the kind takes. */
  input?: unknown;
}

export type JobState = 'waiting' | 'running' | 'done' | 'failed' | 'cancelled';

/** A long computation as it stands. */
export interface JobStatus {
  id: string;
  kind: string;
  /** Such as the name of the series; empty where it is the whole shelf. */
  subject: string;
  state: JobState;
  /** Steps done, of how many; 0 of 0 until it has begun. */
  done: number;
  total: number;
  /** Times it was begun: more than one when a server was ended in the middle. */
  attempts: number;
  /** What it is at, or why it failed. */
  message: string;
  createdAt: string;
  updatedAt: string;
  /** Once it is done, as its kind makes it; left out of lists. */
  result?: unknown;
}
