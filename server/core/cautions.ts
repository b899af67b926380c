/**
 * The field's usual cautions (common practice), wherever somebody is about to go out: on pages and on
 * paper. They defer to whoever decides on the spot.
 */
export const CAUTIONS: readonly string[] = [
  'Ice: keep off it unless somebody who may decide has said that it bears. Count from the shore.',
  'Cold water and swell: stay back from wet rock, pier ends and the ice edge. Nobody wades for a count.',
  'Tides: know the times before you walk out, and which way is back.',
  'Hunting areas: find out who hunts where and when, wear what makes you seen, and leave if unsure.',
  'Working near water alone: tell somebody where you are and when you will be back; carry a charged phone.',
  'Distance: if birds swim away, raise their heads or fly, you are too near. A flushed raft is nobody’s count.',
];

/** Who decides, and what to do about a place that is not safe. */
export const LAST_WORD =
  'Local rules, landowners and permit holders have the last word. No count is worth a risk: a section that nobody could see safely is left out and said to be.';
