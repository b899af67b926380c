import type { SheetWords } from './sheet-words.js';

// The spaces before signs are no-break spaces of full width: the fonts have no narrow one.
export const fr: SheetWords = {
  locale: 'fr',
  title: 'Fiche de terrain',
  fileTitle: (of) => `Fiche de terrain\u00a0: ${of}`,
  span: (start, end) => `de ${start} à ${end}`,
  pageOf: (page, pages) => `page ${page} sur ${pages}`,

  count: 'Dénombrement',
  waterbody: 'Plan d’eau',
  date: 'Date',
  section: 'Secteur',
  window: 'Créneau',
  from: 'Depuis',
  observer: 'Observateur',
  party: 'Qui a compté avec vous (toute personne qui a trouvé, nommé ou annoncé des oiseaux)',

  beforeYouGo: 'Avant de sortir',
  effortAndConditions: 'Effort et conditions',
  began: 'Début',
  ended: 'Fin',
  seen: 'Part vue du secteur',
  scope: 'Espèces visées',
  scopes: ['tous oiseaux d’eau', 'anatidés', 'que :'],
  wind: 'Vent, Beaufort',
  seaState: 'État de la mer',
  ice: 'Glace',
  visibility: 'Visibilité',
  visibilities: ['bonne', 'moyenne', 'mauvaise', 'très mauvaise'],
  glare: 'Éblouissement',
  glares: ['aucun', 'un peu', 'fort'],
  disturbance: 'Dérangement',
  optics: 'Optique',

  birds: 'Oiseaux',
  keys:
    'Nombre : oiseaux entiers, une fourchette comme 40–60, 0 si cherchés sans en trouver, P si présents mais non comptés. ' +
    'Méthode : 1 un par un, B par blocs (noter la taille du bloc, comme B50), E par échantillon, J au jugé. ' +
    'Action : E sur l’eau, T à terre ou sur la glace, V en vol, D dérangés. Cap : degrés depuis le nord. ' +
    'Espèce incertaine ? Notez la paire ou le groupe : c’est une bonne réponse.',
  columns: {
    code: 'Code',
    name: 'Nom',
    number: 'Nombre',
    method: 'Méthode',
    time: 'Heure',
    doing: 'Action',
    heading: 'Cap',
    flock: 'Bande',
    more: 'Sexe, âge, critères, note',
  },

  rafts: 'Rassemblements mixtes : échantillons',
  raftsIntro:
    'Pour un rassemblement mixte : comptez-le en entier, puis nommez 30 à 50 oiseaux dans chacune de plusieurs parties. ' +
    'Ce que vous ne pouvez pas distinguer va à une paire ou à un groupe.',
  raft: (number) => `Rassemblement ${number}`,
  flockLabel: 'Bande',
  birdsInAll: 'Oiseaux en tout',
  countedBy: 'Comptés par (1, B, J)',
  identification: 'Espèce, paire ou groupe',
  sample: (number) => `Échantillon ${number}`,
};
