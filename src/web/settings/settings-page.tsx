import { Page } from '../shell/page.tsx';

export function SettingsPage() {
  return <Page title="Settings">{null}</Page>;
}
