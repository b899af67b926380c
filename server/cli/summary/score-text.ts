import type { Coverage, Ground } from '../../core/score/group-score.js';
import type { PlantedKind } from '../../core/score/truth.js';
import { LARGE, type LinkScore } from '../../core/score/link-score.js';
import type { Score } from '../../core/score/score.js';
import { table, wrap, type Column } from './layout.js';

const left = (title: string, most?: number): Column => ({
  title,
  align: 'left',
  ...(most === undefined ? {} : { most }),
});
const right = (title: string): Column => ({ title, align: 'right' });

const GROUNDS: Readonly<Record<Ground, string>> = {
  several: 'several counts',
  exact: 'several, small and exact',
  single: 'one count',
  partial: 'partial counts',
  ruling: 'a ruling',
  none: 'nothing',
};

const ERRORS: Readonly<Record<PlantedKind, string>> = {
  misidentified: 'misidentified',
  'left-coarser': 'left at a pair or genus',
  overlooked: 'overlooked',
  slip: 'slip of the pen',
};

/** A score for people: compiled count, coverage of intervals, links, planted errors. */
export function scoreText(score: Score): string {
  const sections = [
    [`${score.count} against its truth`],
    compiledPart(score),
    speciesPart(score),
    coveragePart(score),
    linkPart(score),
    reliabilityPart(score),
    totalPart(score),
    plantedPart(score),
  ];
  return sections.map((lines) => `${lines.join('\n')}\n`).join('\n');
}

function compiledPart({ compiled }: Score): readonly string[] {
  const rows = compiled.taxa.map((taxon) => [
    taxon.taxon,
    whole(taxon.truth),
    whole(taxon.compiled),
    signed(taxon.compiled - taxon.truth),
  ]);
  return [
    ...table([left('compiled', 48), right('true'), right('compiled'), right('difference')], rows, [
      [
        'Total',
        whole(compiled.truth),
        whole(compiled.compiled),
        signed(compiled.compiled - compiled.truth),
      ],
    ]),
    '',
    ...wrap(
      `Over ${compiled.taxa.length} taxa: bias ${signed(compiled.bias)}, root mean square ` +
        `${decimal(compiled.rmse)} birds. Species that the compiled count names together ` +
        'somewhere are judged by their sum. Nothing is taken off for double counting before a ruling.',
    ),
  ];
}

function speciesPart({ compiled }: Score): readonly string[] {
  const open = compiled.species.filter(({ atLeast, atMost }) => atLeast !== atMost);
  if (open.length === 0) return ['Every compiled line is a species.'];
  return table(
    [left('species in pairs or groups'), right('true'), right('at least'), right('at most')],
    open.map((each) => [each.species, whole(each.truth), whole(each.atLeast), whole(each.atMost)]),
  );
}

function coveragePart({ coverage }: Score): readonly string[] {
  const share = (part: number, { groups }: Coverage): string => percent(part, groups);
  return [
    ...table(
      [
        left('groups that rest on'),
        right('groups'),
        right('50 %'),
        right('80 %'),
        right('95 %'),
        right('95 % whole'),
        right('bias'),
        right('rms'),
      ],
      coverage.map((each) => [
        GROUNDS[each.ground],
        whole(each.groups),
        ...each.covered.map((part) => share(part, each)),
        share(each.coveredRounded.at(-1) ?? 0, each),
        signed(each.bias),
        decimal(each.rmse),
      ]),
    ),
    '',
    ...wrap(
      'How often the birds that were there to be seen lay in the interval of each level, before ' +
        'rounding; "whole": rounded outward to whole birds. Groups that share a species are judged ' +
        'together.',
    ),
  ];
}

const LINKS: readonly (readonly [keyof LinkScore['byKind'] | 'all', string])[] = [
  ['all', 'all'],
  ['overlap', 'counted from both sides'],
  ['movement', 'moved'],
];

function linkPart({ links }: Score): readonly string[] {
  const rows = LINKS.map(([kind, name]) => {
    const of = kind === 'all' ? links : links.byKind[kind];
    return [
      name,
      whole(of.trueLinks),
      whole(of.shown),
      percent(of.shownRight, of.shown),
      percent(of.shownFound, of.trueLinks),
      whole(of.proposed),
      percent(of.proposedRight, of.proposed),
      percent(of.proposedFound, of.trueLinks),
      whole(of.trueBirds),
      whole(of.birdsRight),
      whole(of.birdsWrong),
    ];
  });
  return [
    ...table(
      [
        left('links'),
        right('true'),
        right('shown'),
        right('right'),
        right('found'),
        right('proposed'),
        right('right'),
        right('found'),
        right('birds'),
        right('off rightly'),
        right('wrongly'),
      ],
      rows,
    ),
    '',
    ...wrap(
      'Right: of the links shown, or proposed; found: of the true ones, one for each further place ' +
        `of a flock (${percent(links.large.proposedFound, links.large.trueLinks)} of those of ` +
        `${LARGE} birds or more are proposed). Birds: truly counted twice, and those that the ` +
        'proposals would take off.',
    ),
  ];
}

function reliabilityPart({ links }: Score): readonly string[] {
  if (links.calibrationError === null) return ['No link is shown.'];
  const bins = links.reliability.filter(({ shown }) => shown > 0);
  return [
    ...table(
      [left('links that say'), right('on average'), right('are right'), right('links')],
      bins.map(({ from, shown, right: rightOnes, said }) => [
        `${whole(100 * from)} to ${whole(100 * from + 10)} %`,
        percent(said ?? 0, 1),
        percent(rightOnes, shown),
        whole(shown),
      ]),
    ),
    '',
    ...wrap(`Expected calibration error ${percent(links.calibrationError, 1)}.`),
  ];
}

function totalPart({ totals, compiled }: Score): readonly string[] {
  if (totals === null) return [];
  const { raw, afterProposals, recorded, inSight } = totals;
  const against = (name: string, truth: number | null): string[][] =>
    truth === null || truth === 0
      ? []
      : [[name, whole(truth), relative(raw / truth - 1), relative(afterProposals / truth - 1)]];
  return table(
    [left('total'), right('true'), right('nothing taken off'), right('all proposals taken off')],
    [
      ['compiled', '', whole(raw), whole(afterProposals)],
      ...against('against birds that somebody recorded', recorded),
      ...against('against birds that were in sight', inSight),
      ...against('against all birds', compiled.truth),
    ],
  );
}

function relative(share: number): string {
  return `${share < 0 ? '−' : '+'}${(100 * Math.abs(share)).toFixed(1)} %`;
}

function plantedPart({ planted }: Score): readonly string[] {
  if (planted === null) return ['The truth does not say which errors were planted.'];
  return [
    ...table(
      [
        left('planted error'),
        right('birds'),
        right('planted'),
        right('found'),
        right('findable'),
        right('found'),
        right('recall'),
        right('shown'),
        right('precision'),
      ],
      planted.map((each) => [
        ERRORS[each.kind],
        `${each.fewestBirds}+`,
        whole(each.planted),
        whole(each.foundOfAll),
        whole(each.findable),
        whole(each.found),
        percent(each.found, each.findable),
        whole(each.shown),
        percent(each.shownRight, each.shown),
      ]),
    ),
    '',
    ...wrap(
      'Findable: errors of which another tally contradicts so many birds; recall is of these. An ' +
        'error is found if at least half of its birds, or of its contradicted birds, are at stake ' +
        'in a disagreement about it. Shown: disagreements of the kind that such errors show up as; precision: those of them that rest ' +
        'on such errors for at least half of their birds.',
    ),
  ];
}

function percent(part: number, all: number): string {
  return all === 0 ? '–' : `${((100 * part) / all).toFixed(0)} %`;
}

function whole(number: number): string {
  return String(Math.round(number)).replace(/\B(?=(\d{3})+$)/gu, ',');
}

function decimal(number: number): string {
  return number.toFixed(1);
}

function signed(number: number): string {
  const text = Number.isInteger(number) ? whole(Math.abs(number)) : decimal(Math.abs(number));
  return number < 0 ? `−${text}` : text;
}
