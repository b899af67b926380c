import type { NameLanguage } from './taxa/taxon-name.js';

/** A text for people in every language of the pages. */
export type InLanguages = Readonly<Record<NameLanguage, string>>;

/**
 * The field's usual cautions (common practice), wherever somebody is about to go out: on pages and on
 * paper. They defer to whoever decides on the spot.
 */
export const CAUTIONS: readonly InLanguages[] = [
  {
    en: 'Ice: keep off it unless somebody who may decide has said that it bears. Count from the shore.',
    fr: 'Glace : n’y allez pas, sauf si une personne habilitée à en décider a dit qu’elle porte. Comptez depuis la rive.',
  },
  {
    en: 'Cold water and swell: stay back from wet rock, pier ends and the ice edge. Nobody wades for a count.',
    fr: 'Eau froide et houle : restez en retrait des rochers mouillés, du bout des jetées et du bord de la glace. On n’entre pas dans l’eau pour un dénombrement.',
  },
  {
    en: 'Tides: know the times before you walk out, and which way is back.',
    fr: 'Marées : avant de vous avancer, sachez à quelles heures elles montent et par où revenir.',
  },
  {
    en: 'Hunting areas: find out who hunts where and when, wear what makes you seen, and leave if unsure.',
    fr: 'Zones de chasse : renseignez-vous sur qui chasse, où et quand, portez de quoi être vu et partez en cas de doute.',
  },
  {
    en: 'Working near water alone: tell somebody where you are and when you will be back; carry a charged phone.',
    fr: 'Seul près de l’eau : dites à quelqu’un où vous êtes et quand vous reviendrez ; gardez sur vous un téléphone chargé.',
  },
  {
    en: 'Distance: if birds swim away, raise their heads or fly, you are too near. A flushed raft is nobody’s count.',
    fr: 'Distance : si les oiseaux s’éloignent à la nage, lèvent la tête ou s’envolent, vous êtes trop près. Une bande envolée n’est comptée par personne.',
  },
];

/** Who decides, and what to do about a place that is not safe. */
export const LAST_WORD: InLanguages = {
  en: 'Local rules, landowners and permit holders have the last word. No count is worth a risk: a section that nobody could see safely is left out and said to be.',
  fr: 'Les règles locales, les propriétaires des lieux et les titulaires de permis ont le dernier mot. Aucun dénombrement ne vaut un risque : un secteur que personne n’a pu voir en sécurité est laissé de côté, et on le dit.',
};
