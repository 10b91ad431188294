import { Page } from '../shell/page.tsx';

export function ShelfPage() {
  return <Page title="Shelf">{null}</Page>;
}
