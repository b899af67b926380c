import type { Rule } from '../core/model/protocol.js';
import { say, type Saying } from '../core/model/saying.js';

/** A consensus rule in a sentence; English has its name in the protocol. */
export const RULE_WORDS: Readonly<Record<Rule, Saying>> = {
  designated: say('designated'),
  highest: say('highest'),
  mean: say('mean'),
  median: say('median'),
  'random-effects': say('random-effects'),
  'weighted-mean': say('weighted-mean'),
  'robust-mean': say('robust-mean'),
};
