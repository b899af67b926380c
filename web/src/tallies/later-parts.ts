import { later } from '../ui/later.js';

// What the first taps of a tally do not need: the form stands without it, and gets it right after.

export const GridPart = later(async () => (await import('./grid-part.js')).GridPart);
export const MarksPart = later(async () => (await import('./marks-part.js')).MarksPart);
export const MoreLineFields = later(
  async () => (await import('./more-line-fields.js')).MoreLineFields,
);
export const QueriesToMe = later(async () => (await import('./queries-to-me.js')).QueriesToMe);
export const RaftEditor = later(async () => (await import('./raft-editor.js')).RaftEditor);
export const ReviewStep = later(async () => (await import('./review-step.js')).ReviewStep);
export const SeenPart = later(async () => (await import('./seen-part.js')).SeenPart);
export const SubmittedTally = later(
  async () => (await import('./submitted-tally.js')).SubmittedTally,
);
export const ReceivedTally = later(async () => (await import('./sent-tally.js')).ReceivedTally);
export const TallyOnItsWay = later(async () => (await import('./sent-tally.js')).TallyOnItsWay);
export const ChangedTwice = later(async () => (await import('./two-tallies.js')).ChangedTwice);
export const ReceivedAndHere = later(
  async () => (await import('./two-tallies.js')).ReceivedAndHere,
);
