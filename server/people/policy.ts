import type { Act, CountState, Role } from '../api/generated/schema.js';

/**
 * `after-own`: only in cells whose own tally is in, or whose window is closed.
 * `unblinded`: everywhere but in cells where one still has to submit a tally oneself.
 */
export type Permission = 'yes' | 'no' | 'after-own' | 'unblinded';

type ByState = readonly [
  open: Permission,
  closed: Permission,
  signed: Permission,
  sealed: Permission,
];

const STATES: readonly CountState[] = ['OPEN', 'CLOSED', 'SIGNED', 'SEALED'];

/** A role that does not stand under an act may never do it. */
type Policy = Readonly<Record<Act, Readonly<Partial<Record<Role, ByState>>>>>;

/** Who may do what, in which state of a count. Everything that asks "may they?" reads it here. */
const POLICY: Policy = {
  PLAN: { LEADER: ['yes', 'no', 'no', 'no'] },
  INVITE: { LEADER: ['yes', 'yes', 'yes', 'yes'] },
  CLOSE_WINDOW: { LEADER: ['yes', 'no', 'no', 'no'] },
  // An observer that of an assignment of their own.
  PRINT_FIELD_SHEET: {
    LEADER: ['yes', 'yes', 'yes', 'yes'],
    OBSERVER: ['yes', 'yes', 'yes', 'yes'],
  },
  SUBMIT_TALLY: { OBSERVER: ['yes', 'no', 'no', 'no'] },
  SEE_COVERAGE: {
    LEADER: ['yes', 'yes', 'yes', 'yes'],
    COMPILER: ['yes', 'yes', 'yes', 'yes'],
  },
  SEE_TALLIES: {
    LEADER: ['no', 'yes', 'yes', 'yes'],
    COMPILER: ['unblinded', 'yes', 'yes', 'yes'],
    OBSERVER: ['after-own', 'yes', 'yes', 'yes'],
  },
  REVIEW: {
    LEADER: ['no', 'yes', 'yes', 'yes'],
    COMPILER: ['unblinded', 'yes', 'yes', 'yes'],
  },
  SEE_OWN_AGREEMENT: { OBSERVER: ['no', 'yes', 'yes', 'yes'] },
  RULE: { COMPILER: ['unblinded', 'yes', 'yes', 'no'] },
  SECOND: {
    LEADER: ['no', 'yes', 'yes', 'no'],
    COMPILER: ['unblinded', 'yes', 'yes', 'no'],
  },
  ASK: { COMPILER: ['unblinded', 'yes', 'yes', 'no'] },
  ANSWER: { OBSERVER: ['yes', 'yes', 'yes', 'no'] },
  SIGN_OFF: {
    LEADER: ['no', 'yes', 'yes', 'no'],
    COMPILER: ['no', 'yes', 'yes', 'no'],
  },
  SEAL: {
    LEADER: ['no', 'no', 'yes', 'no'],
    COMPILER: ['no', 'no', 'yes', 'no'],
  },
  SEE_COMPILED: {
    LEADER: ['no', 'yes', 'yes', 'yes'],
    COMPILER: ['unblinded', 'yes', 'yes', 'yes'],
    OBSERVER: ['no', 'no', 'no', 'yes'],
  },
  SEE_AUDIT: {
    LEADER: ['yes', 'yes', 'yes', 'yes'],
    COMPILER: ['yes', 'yes', 'yes', 'yes'],
    OBSERVER: ['no', 'no', 'no', 'yes'],
  },
};

export const ACTS = Object.keys(POLICY) as readonly Act[];

/** One cell of the table. */
export function permission(act: Act, role: Role, state: CountState): Permission {
  return POLICY[act][role]?.[STATES.indexOf(state)] ?? 'no';
}

/** What someone of these roles may do: all that any one of them may. */
export function permissions(
  act: Act,
  roles: readonly Role[],
  state: CountState,
): ReadonlySet<Permission> {
  const found = roles.map((role) => permission(act, role, state));
  return new Set(found.filter((answer) => answer !== 'no'));
}

/** True if one of the roles may do it at all, though perhaps not in this state. */
export function isEverAllowed(act: Act, roles: readonly Role[]): boolean {
  return roles.some((role) => POLICY[act][role] !== undefined);
}
