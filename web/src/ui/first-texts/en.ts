import { messages as people } from '../../people/messages/en.po';
import { messages as plans } from '../../plans/messages/en.po';
import { messages as tallies } from '../../tallies/messages/en.po';
import { messages as ui } from '../messages/en.po';

export const messages = { ...ui, ...people, ...plans, ...tallies };
/** The core speaks English. */
export const wording = null;
