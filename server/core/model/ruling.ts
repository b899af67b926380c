import type { Species } from './snapshot.js';
import type { Rule } from './protocol.js';
import { say, type Saying } from './saying.js';

/** What a ruling is about. A group is named by its identifications (taxon strings), sorted. */
export type RulingTarget =
  | { readonly kind: 'group'; readonly cell: string; readonly group: readonly string[] }
  | { readonly kind: 'link'; readonly link: string }
  | { readonly kind: 'tally'; readonly tally: string }
  | { readonly kind: 'line'; readonly line: string };

/** What the compiler decided; which decision fits which target is said by `DECISIONS_ON`. */
export type Decision =
  /** The drafted numbers stay as they are; the disagreement is settled by that. */
  | { readonly kind: 'let-stand' }
  /** This observer's own lines are the group's compiled lines. */
  | { readonly kind: 'accept-observer'; readonly observer: string }
  /** These are the group's compiled lines; taxa as candidate sets. */
  | {
      readonly kind: 'set-numbers';
      readonly lines: readonly {
        readonly candidates: readonly Species[];
        readonly number: number;
      }[];
    }
  /** Another rule than the protocol's settles the group's total. */
  | { readonly kind: 'take-rule'; readonly rule: Rule }
  /** Every drafted line of the group whose set lies within `from` is compiled as `to` (lowered to a pair or group, or raised with evidence). */
  | {
      readonly kind: 'identify-as';
      readonly from: readonly Species[];
      readonly to: readonly Species[];
    }
  /** The group is compared and settled together with another of its cell, named by its taxa. */
  | { readonly kind: 'merge-groups'; readonly with: readonly string[] }
  /** The group is taken apart: parts of its taxa, which together are all of them. */
  | { readonly kind: 'split-group'; readonly parts: readonly (readonly string[])[] }
  /** One line is read as another identification before anything is compared. */
  | { readonly kind: 'identify-line'; readonly to: readonly Species[] }
  /** The tally or line is left out of everything, and stays on record. */
  | { readonly kind: 'exclude' }
  | { readonly kind: 'confirm-link' }
  | { readonly kind: 'reject-link' };

export interface Ruling {
  readonly id: string;
  /** Person id of the compiler. */
  readonly by: string;
  readonly reason: string;
  readonly target: RulingTarget;
  readonly decision: Decision;
  /**
   * What the target's lines said when the ruling was made, as `basisOf` writes it; `null` for a
   * ruling written by hand. Where it differs from what they say now, the ruling is stale.
   */
  readonly basis: readonly string[] | null;
}

/** What a ruling may be about, as it follows "a". */
export const TARGET_NOUNS: Readonly<Record<RulingTarget['kind'], Saying>> = {
  group: say('group'),
  link: say('link'),
  tally: say('tally'),
  line: say('line'),
};

/** What may be decided about what. */
export const DECISIONS_ON = {
  group: [
    'let-stand',
    'accept-observer',
    'set-numbers',
    'take-rule',
    'identify-as',
    'merge-groups',
    'split-group',
  ],
  link: ['confirm-link', 'reject-link'],
  tally: ['exclude'],
  line: ['exclude', 'identify-line'],
} as const satisfies Readonly<Record<RulingTarget['kind'], readonly Decision['kind'][]>>;
