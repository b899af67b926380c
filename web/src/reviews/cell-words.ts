import { t } from '@lingui/core/macro';
import { listed } from '../ui/words.js';

interface CellName {
  readonly sections: readonly { readonly name: string }[];
  readonly layer?: string;
}

/** A cell as people call it: its sections, and whether it is about birds flying through. */
export function cellWords(cell: CellName): string {
  const place = listed(cell.sections.map(({ name }) => name));
  return cell.layer === 'flying-through' ? t`${place}, flying through` : place;
}
