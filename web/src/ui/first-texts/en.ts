import { messages as people } from '../../people/messages/en.po';
import { messages as plans } from '../../plans/messages/en.po';
import { messages as tallies } from '../../tallies/messages/en.po';
import { messages as ui } from '../messages/en.po';

export const catalogues = [ui, people, plans, tallies];
