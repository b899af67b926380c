import { messages as people } from '../../people/messages/fr.po';
import { messages as plans } from '../../plans/messages/fr.po';
import { messages as tallies } from '../../tallies/messages/fr.po';
import { messages as ui } from '../messages/fr.po';

export const catalogues = [ui, people, plans, tallies];
