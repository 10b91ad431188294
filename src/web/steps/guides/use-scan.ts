import { useCallback, useEffect, useRef, useState } from 'react';
import { imageFound } from '../../../image/image-kinds.ts';
import type { Finding } from '../../../image/index.ts';
import type { ScanRead, ScanSaid, ScanTask } from './scan-messages.ts';

export interface ScanFile {
  name: string;
  /** What is shown. */
  address: string;
  /** A telephone's picture of the reference sheet. */
  onSheet: boolean;
  /** As it was chosen, to be kept with what is read on it. */
  picture: File;
}
interface ScanState {
  file: ScanFile | undefined;
  /** Share of the work done; undefined while nothing is being read. */
  share: number | undefined;
  read: ScanRead | undefined;
  refused: readonly Finding[];
}
const nothing: ScanState = { file: undefined, share: undefined, read: undefined, refused: [] };

/** Reads scans in a worker of their own; a newer one takes the place of the one before. */
export function useScan() {
  const [state, setState] = useState<ScanState>(nothing);
  const kept = useRef<{
    worker?: Worker;
    id: number;
    bytes?: Uint8Array;
    onSheet?: boolean;
    address?: string;
    flat?: string;
  }>({
    id: 0,
  });
  const forget = useCallback(() => {
    kept.current.worker?.terminate();
    for (const address of [kept.current.address, kept.current.flat])
      if (address) URL.revokeObjectURL(address);
    kept.current = { id: kept.current.id };
    setState(nothing);
  }, []);
  useEffect(() => forget, [forget]);

  /** What is shown: the file itself, or the sheet made flat out of it. */
  const show = (read: ScanRead) => {
    const { flat } = read;
    if (kept.current.flat) URL.revokeObjectURL(kept.current.flat);
    kept.current.flat = flat && URL.createObjectURL(flat);
    const address = kept.current.flat;
    setState((last) => ({
      ...last,
      share: undefined,
      read,
      file: last.file && address ? { ...last.file, address } : last.file,
    }));
  };
  const ask = (dpi?: number) => {
    const { bytes, onSheet = false } = kept.current;
    if (!bytes) return;
    kept.current.worker?.terminate();
    const worker = new Worker(new URL('./scan-worker.ts', import.meta.url), { type: 'module', name: 'scan' });
    kept.current.worker = worker;
    const id = ++kept.current.id;
    worker.onmessage = ({ data }: MessageEvent<ScanSaid>) => {
      if (data.id !== kept.current.id) return;
      if (data.says === 'progress') setState((last) => ({ ...last, share: data.share }));
      else if (data.says === 'read') show(data.read);
      else setState((last) => ({ ...last, share: undefined, read: undefined, refused: data.findings }));
    };
    worker.onerror = () => {
      const finding = imageFound('image', 'scan/unreadable', { reason: 'the reader stopped' });
      setState((last) => ({ ...last, share: undefined, refused: [finding] }));
    };
    setState((last) => ({ ...last, share: 0, refused: [] }));
    worker.postMessage({ id, bytes, dpi, onSheet } satisfies ScanTask);
  };
  const open = async (picture: File, onSheet: boolean) => {
    forget();
    kept.current.bytes = new Uint8Array(await picture.arrayBuffer());
    kept.current.onSheet = onSheet;
    kept.current.address = URL.createObjectURL(picture);
    setState({ ...nothing, file: { name: picture.name, address: kept.current.address, onSheet, picture } });
    ask();
  };
  return { ...state, open, readAgain: ask, forget };
}
