import { useCallback, useEffect, useRef, useState } from 'react';
import type { Finding } from '../../image/index.ts';
import type { ScanRead, ScanSaid, ScanTask } from './scan-messages.ts';

export interface ScanState {
  file: { name: string; address: string } | undefined;
  /** Share of the work done; undefined while nothing is being read. */
  share: number | undefined;
  read: ScanRead | undefined;
  refused: readonly Finding[];
}
const nothing: ScanState = { file: undefined, share: undefined, read: undefined, refused: [] };

/** Reads scans in a worker of their own; a newer one takes the place of the one before. */
export function useScan() {
  const [state, setState] = useState<ScanState>(nothing);
  const kept = useRef<{ worker?: Worker; id: number; bytes?: Uint8Array; address?: string }>({ id: 0 });
  const forget = useCallback(() => {
    kept.current.worker?.terminate();
    if (kept.current.address) URL.revokeObjectURL(kept.current.address);
    kept.current = { id: kept.current.id };
    setState(nothing);
  }, []);
  useEffect(() => forget, [forget]);

  const ask = (dpi?: number) => {
    const { bytes } = kept.current;
    if (!bytes) return;
    kept.current.worker?.terminate();
    const worker = new Worker(new URL('./scan-worker.ts', import.meta.url), { type: 'module', name: 'scan' });
    kept.current.worker = worker;
    const id = ++kept.current.id;
    worker.onmessage = ({ data }: MessageEvent<ScanSaid>) => {
      if (data.id !== kept.current.id) return;
      if (data.says === 'progress') setState((last) => ({ ...last, share: data.share }));
      else if (data.says === 'read') setState((last) => ({ ...last, share: undefined, read: data.read }));
      else setState((last) => ({ ...last, share: undefined, read: undefined, refused: data.findings }));
    };
    worker.onerror = () => {
      const message =
        'the scan could not be read on this device; save it smaller, or at 600 dpi, and try again';
      setState((last) => ({ ...last, share: undefined, refused: [{ path: 'image', message }] }));
    };
    setState((last) => ({ ...last, share: 0, refused: [] }));
    worker.postMessage({ id, bytes, dpi } satisfies ScanTask);
  };
  const open = async (picture: File) => {
    forget();
    kept.current.bytes = new Uint8Array(await picture.arrayBuffer());
    kept.current.address = URL.createObjectURL(picture);
    setState({ ...nothing, file: { name: picture.name, address: kept.current.address } });
    ask();
  };
  return { ...state, open, readAgain: ask, forget };
}
