import type { Ruling, RulingTarget } from '../model/ruling.js';
import { say, type Saying } from '../model/saying.js';
import { targetSaying } from './check-contradictions.js';

/** What became of a ruling, where several files have to say the same. */
export function applied({ decision, target }: Ruling): Saying {
  return say('{kind}: {target}', { kind: decision.kind, target: targetSaying(target) });
}

export function talliesChanged(target: RulingTarget): Saying {
  return say('The tallies of {target} have changed since the ruling', {
    target: targetSaying(target),
  });
}

export function noGroup(target: RulingTarget): Saying {
  return say('{target} is no group of the count any more', { target: targetSaying(target) });
}
