import type { SheetWords } from './sheet-words.js';

export const en: SheetWords = {
  // The day before the month, and a clock of 24 hours.
  locale: 'en-GB',
  title: 'Field sheet',
  fileTitle: (of) => `Field sheet: ${of}`,
  span: (start, end) => `${start} to ${end}`,
  pageOf: (page, pages) => `page ${page} of ${pages}`,

  count: 'Count',
  waterbody: 'Waterbody',
  date: 'Date',
  section: 'Section',
  window: 'Window',
  from: 'From',
  observer: 'Observer',
  party: 'Who counted with you (everyone who found, named or called birds)',

  beforeYouGo: 'Before you go out',
  effortAndConditions: 'Effort and conditions',
  began: 'Began',
  ended: 'Ended',
  seen: 'Seen of the section',
  scope: 'Set out to count',
  scopes: ['all waterbirds', 'waterfowl', 'only:'],
  wind: 'Wind, Beaufort',
  seaState: 'Sea state',
  ice: 'Ice',
  visibility: 'Visibility',
  visibilities: ['good', 'moderate', 'poor', 'very poor'],
  glare: 'Glare',
  glares: ['none', 'some', 'strong'],
  disturbance: 'Disturbance',
  optics: 'Optics',

  birds: 'Birds',
  keys:
    'Number: whole birds, a range as 40–60, 0 for looked for and none, P for present but not counted. ' +
    'Method: 1 one by one, B in blocks (write the block’s size, as B50), S by a sample, G guess. ' +
    'Doing: W on water, L on land or ice, F flying through, X flushed. Heading: degrees from north. ' +
    'Not sure of the species? Use the pair or group: it is a good answer.',
  columns: {
    code: 'Code',
    name: 'Name',
    number: 'Number',
    method: 'Method',
    time: 'Time',
    doing: 'Doing',
    heading: 'Heading',
    flock: 'Flock',
    more: 'Sex, age, marks, note',
  },

  rafts: 'Mixed rafts: scan samples',
  raftsIntro:
    'For a mixed raft: count the whole of it, then name 30 to 50 birds in each of several parts. ' +
    'What you cannot tell goes to a pair or group.',
  raft: (number) => `Raft ${number}`,
  flockLabel: 'Flock label',
  birdsInAll: 'Birds in all',
  countedBy: 'Counted by (1, B, G)',
  identification: 'Species, pair or group',
  sample: (number) => `Sample ${number}`,
};
