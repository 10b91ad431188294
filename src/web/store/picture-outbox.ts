import type { Change } from '../../record/operation.ts';
import { type BrowserStore, openBrowserStore } from './browser-store.ts';

/** A picture that is not on the server yet, with where it goes. Its rows have their ids already: sent twice, it is one. */
export interface WaitingPicture {
  /** Of its row among the pictures. */
  id: string;
  attachment: string;
  build: string;
  test: string;
  takenBy: string;
  name: string;
  type: string;
  bytes: ArrayBuffer;
  /** Written together with it. */
  also: readonly Change[];
}

/** Where pictures wait until the server has them, so that a lost network or a closed page loses none. */
export interface PictureOutbox {
  keep(picture: WaitingPicture): Promise<void>;
  drop(id: string): Promise<void>;
  /** In the order they were kept. */
  of(build: string, test: string): Promise<WaitingPicture[]>;
}

let opened: Promise<PictureOutbox> | undefined;

/** The browser's database; where that is not to be had, this page's memory. */
export function pictureOutbox(): Promise<PictureOutbox> {
  opened ??= openBrowserStore('fairbend-pictures', 'pictures', 'id').then(
    inBrowserStore,
    () => new HeldPictures(),
  );
  return opened;
}

function inBrowserStore(kept: BrowserStore): PictureOutbox {
  return {
    keep: (picture) => kept.write((store) => store.put({ ...picture, keptAt: Date.now() })),
    drop: (id) => kept.write((store) => store.delete(id)),
    of: async (build, test) => {
      const all: (WaitingPicture & { keptAt: number })[] = await kept.read((store) => store.getAll());
      return all
        .filter((picture) => picture.build === build && picture.test === test)
        .sort((a, b) => a.keptAt - b.keptAt);
    },
  };
}

/** Lost with the page. */
class HeldPictures implements PictureOutbox {
  private readonly held = new Map<string, WaitingPicture>();

  async keep(picture: WaitingPicture): Promise<void> {
    this.held.set(picture.id, picture);
  }

  async drop(id: string): Promise<void> {
    this.held.delete(id);
  }

  async of(build: string, test: string): Promise<WaitingPicture[]> {
    return [...this.held.values()].filter((picture) => picture.build === build && picture.test === test);
  }
}
