import type { ApiClient } from './api-client.js';

const TALLY = `{ id observer { id name } party { id } sections { id } scope coverage version replaces
  reason total lines { id written taxon number low high method note marks { mark state } }
  samples { raft sample taxon number } }`;
const QUERY = '{ id disagreementId about askedBy { id } to { id } question answer }';
const STATISTIC = '{ value low high n }';
const statistics = (...names: string[]): string =>
  names.map((name) => `${name} ${STATISTIC}`).join(' ');
const NUMBERS = statistics(
  'percentAgreement',
  'brayCurtisSimilarity',
  'concordance',
  'withinTolerance',
  'alpha',
);
const MEASURES = `${NUMBERS} ${statistics('kappa', 'weightedKappa', 'adjustedKappa')}`;
const CONFUSION = '{ taxa entries { a b number } }';
const PAIR = `{ a { id } b { id } measures { ${MEASURES} } confusion ${CONFUSION}
  ratios { points { cell group taxa a b mean ratio } ${statistics('meanRatio', 'lower', 'upper')} }
  sensitivities { taxon byA byB byBoth ${statistics('ofA', 'ofB')} } }`;
const RATIO = `{ observer { id } ratio ${STATISTIC} }`;
const INTRACLASS = ['oneWay', 'agreement', 'consistency'].flatMap((form) => [
  `${form}Single`,
  `${form}Mean`,
]);
const AGREEMENT = `{ overall { ${MEASURES} } byPair ${PAIR}
  byTaxon { taxon ${NUMBERS} sensitivity ${STATISTIC} }
  bySection { sections { id } measures { ${MEASURES} } }
  intraclass { observers { id } ${statistics(...INTRACLASS)} } confusion ${CONFUSION}
  detection { observers { id } sections { id } seen matched warning
    byObserver { observer { id } flocks chance ${STATISTIC} } ${statistics('flocks', 'missedByAll')}
    model { slopes { covariate slope standardError } ${statistics('flocks', 'birds', 'missedByAll')} } }
  observers ${RATIO}
  observerModel { n groups ${statistics('betweenGroups', 'betweenObservers', 'residual')}
    observers { observer { id } set ratio ${STATISTIC} } }
  observerConsistency { groups hCritical { questioned serious } kCritical { questioned serious }
    observers { observer { id } h k } } }`;
const RULING = `{ id by { id } reason target { kind cell group link tally line }
  decision { kind observer rule from to numbers { taxon number } } state secondedBy { id } replaces text }`;

export const REVIEW = `{
  inputHash openMatters withheld
  cells { id tallies { tally observer total lines { taxon number } }
    pairings { a b agreed compatible differently onlyA onlyB flows { kind a b number } }
    bounds { species observer atLeast atMost } birdsInConflict
    groups { id taxa totals { observer number } consensus { rule basis number low high byRule { rule number } }
      lines { taxon number } } }
  disagreements { id kind severity birds cell { id } group { taxa } link { id } observers { id } text
    lines { line { id taxon number note } tally { id } }
    proposals { text target { kind cell group link tally line } decision { kind observer } }
    ruling ${RULING} queries ${QUERY} }
  links { id probability birds first { taxon number } second { taxon number } }
  flocks { lines observer { id } taxon number start end position }
  agreement ${AGREEMENT}
  rulings ${RULING}
}`;

/** Every field of a count, each asked for by itself: what is refused does not hide the rest. */
const FIELDS = [
  'id name state myRoles may windows { id closed } people { person { id } roles hasJoined }',
  `assignments { id person { id } submitted tally ${TALLY} }`,
  'coverage { section { id } window { id } assigned { id } submitted { id } partial { id } independentTallies }',
  `myTallies ${TALLY}`,
  `queries ${QUERY}`,
  `review ${REVIEW}`,
  `ownAgreement { byPair ${PAIR} ratios ${RATIO} }`,
  `compiled { total lines { taxon number low high atLeast atMost }
     ledger { from to taxon number text lines { line { id number } tally { id } } } }`,
  'auditTrail { size intact entries { seq act text body by { id } } }',
];

/**
 * All that somebody can read of a count through the API, refusals included, as one text: what must
 * stay hidden is looked for in it.
 */
export async function everythingVisible(
  client: ApiClient,
  countId: string,
  tallyIds: readonly string[],
): Promise<string> {
  const answers = [
    ...FIELDS.map((fields) =>
      client.send(`query ($id: ID!) { count(id: $id) { ${fields} } }`, { id: countId }),
    ),
    ...tallyIds.map((id) => client.send(`query ($id: ID!) { tally(id: $id) ${TALLY} }`, { id })),
    client.send('{ counts { id state } me { id } }'),
    client.send(`mutation ($id: ID!) { reconcile(countId: $id) ${REVIEW} }`, { id: countId }),
  ];
  return JSON.stringify(await Promise.all(answers));
}
