import { deviceFamily, type Path } from '../../record/operation.ts';
import type { FieldValue } from '../../record/schema.ts';

/** "move guide.k3p9x2ab" is "Move guide"; an undo says what it took back. */
export function labelOf(gesture: string): string {
  const [, verb, target] = /^(undo|redo):\d+:(.*)$/s.exec(gesture) ?? [];
  const label = (target ?? gesture).replace(/\.[^.]*$/, '');
  if (verb) return `${verb === 'undo' ? 'Undid' : 'Did again'}: ${label}`;
  return label.charAt(0).toUpperCase() + label.slice(1);
}

/** 'sections', 'fromOwnTip': "sections, from own tip: 4 1/2 in → 5 in". */
export function changeWords([collection, , field]: Path, from: FieldValue, to: FieldValue): string {
  if (field === 'gone') return `${collection}: ${to === true ? 'a row put away' : 'a row brought back'}`;
  return `${plain(collection)}, ${plain(field)}: ${shown(from)} → ${shown(to)}`;
}

/** Whose change: this browser's, the server's own, or another's by the name its device gave itself. */
export function whoseWords(device: string, own: string): string {
  const family = deviceFamily(device);
  if (family === deviceFamily(own)) return 'this device';
  return family === 'server' ? 'the shop’s computer' : `device ${family.slice(0, 4)}`;
}

function plain(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function shown(value: FieldValue): string {
  if (value === null || value === '') return 'empty';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  const text = typeof value === 'object' ? value.text : String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
