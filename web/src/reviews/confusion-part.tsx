import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import type { ConfusionPartsFragment, PairPartsFragment } from '../graphql/generated/graphql.js';
import { SelectField } from '../ui/select-field.js';
import { readTaxon } from '../ui/taxon.js';
import { birds, listed, percent } from '../ui/words.js';
import { pictureNotes } from './agreement-notes.js';
import {
  confusionBlocks,
  namedBirds,
  totalsByKind,
  type NamedBirds,
  type NamedKind,
} from './confusion-blocks.js';
import {
  blockWords,
  ConfusionGrid,
  ConfusionLegend,
  kindWords,
  wholeBirds,
} from './confusion-grid.js';
import { MethodNote } from './method-note.js';
import { SensitivityTable } from './sensitivity-table.js';
import { StatisticTable } from './statistic-table.js';
import type { Column } from './tab-separated.js';

/** What birds were called: shaded grids of the names that were given to the same birds. */
export function ConfusionPart(props: {
  /** All pairs together; `null` where the reader may see single pairs only. */
  readonly all: ConfusionPartsFragment | null;
  readonly pairs: readonly PairPartsFragment[];
  readonly least: number;
}): ReactNode {
  const { all, pairs, least } = props;
  const [chosen, choose] = useState(all === null ? keyOf(pairs[0]) : '');
  const pair = pairs.find((one) => keyOf(one) === chosen) ?? null;
  const table = pair?.confusion ?? all;
  if (table === null) return null;
  const observers = pair === null ? null : { a: pair.a.name, b: pair.b.name };
  const named = namedBirds(table, pair === null);
  const blocks = confusionBlocks(named);
  return (
    <>
      <SelectField
        label={t`Names given by`}
        value={chosen}
        {...(all !== null && { none: t`All pairs together` })}
        options={pairs.map((one) => ({
          value: keyOf(one),
          label: listed([one.a.name, one.b.name]),
        }))}
        onChange={choose}
      />
      <p>{confusionSentence(named, observers)}</p>
      {blocks.length === 0 ? null : <ConfusionLegend />}
      <div className="confusion-blocks">
        {blocks.map((block) => (
          <figure key={block.taxa.join()} className="stack-tight">
            <h3 className="plot-title">{blockWords(block)}</h3>
            <ConfusionGrid block={block} observers={observers} />
          </figure>
        ))}
      </div>
      <p>
        <Trans>
          The grids have only names that some bird joins; all others are in the table. A name beside
          a pair or group that holds it is a difference of detail, not a contradiction, and no grid
          says which name is right. Birds are paired so that as many as possible agree: true
          confusion may be more, never less.
        </Trans>
      </p>
      <details>
        <summary>
          <Trans>All names in numbers</Trans>
        </summary>
        <StatisticTable
          label={t`what birds were called`}
          columns={columnsFor(observers)}
          rows={sorted(named)}
          keyOf={({ a, b }) => `${a ?? ''} : ${b ?? ''}`}
          least={least}
        />
      </details>
      {pair === null ? null : <SensitivityTable pair={pair} least={least} />}
      <MethodNote note={pictureNotes.confusion} here={restsOnBirds(named)} />
      {pair === null ? null : (
        <MethodNote
          note={pictureNotes.sensitivity}
          here={plural(least, {
            one: 'A number where both saw birds of the taxon in # cell or more.',
            other: 'A number where both saw birds of the taxon in # cells or more.',
          })}
        />
      )}
    </>
  );
}

function keyOf(pair: PairPartsFragment | undefined): string {
  return pair === undefined ? '' : `${pair.a.id} ${pair.b.id}`;
}

/** Of the birds that both saw, how many have which kind of names; and the commonest difference. */
function confusionSentence(
  named: readonly NamedBirds[],
  observers: { readonly a: string; readonly b: string } | null,
): string {
  const { agreed, compatible, differently } = totalsByKind(named);
  const both = agreed + compatible + differently;
  if (both === 0) return t`No bird was seen by both of two independent observers.`;
  const [most] = named
    .filter(({ kind }) => kind === 'compatible' || kind === 'differently')
    .sort((one, other) => other.number - one.number);
  const [whole, written] = [Math.round(both), wholeBirds(both)];
  if (most === undefined) {
    return plural(whole, {
      one: `The only bird that both saw has the same name.`,
      other: `All ${written} birds that both saw have the same name.`,
    });
  }
  const same = percent(agreed / both);
  const coarser = percent(compatible / both);
  const different = percent(differently / both);
  const shares = plural(whole, {
    one: `Of ${written} bird that both saw, ${same} have the same name, ${coarser} agree at a coarser level, and ${different} were identified differently.`,
    other: `Of ${written} birds that both saw, ${same} have the same name, ${coarser} agree at a coarser level, and ${different} were identified differently.`,
  });
  return `${shares} ${mostOften(most, observers)}`;
}

/** The commonest difference. */
function mostOften(
  { a, b, number }: NamedBirds,
  observers: { readonly a: string; readonly b: string } | null,
): string {
  const [one, other] = [common(a), common(b)];
  const [whole, written] = [Math.round(number), wholeBirds(number)];
  if (observers === null) {
    return plural(whole, {
      one: `Most often, ${one} by one was ${other} by the other: ${written} bird.`,
      other: `Most often, ${one} by one was ${other} by the other: ${written} birds.`,
    });
  }
  const { a: nameA, b: nameB } = observers;
  return plural(whole, {
    one: `Most often, ${one} by ${nameA} was ${other} by ${nameB}: ${written} bird.`,
    other: `Most often, ${one} by ${nameA} was ${other} by ${nameB}: ${written} birds.`,
  });
}

function common(taxon: string | null): string {
  return taxon === null ? '–' : readTaxon(taxon).common;
}

const order: readonly NamedKind[] = ['differently', 'compatible', 'agreed', 'only'];

function sorted(named: readonly NamedBirds[]): readonly NamedBirds[] {
  return [...named].sort(
    (one, other) =>
      order.indexOf(one.kind) - order.indexOf(other.kind) || other.number - one.number,
  );
}

function columnsFor(
  observers: { readonly a: string; readonly b: string } | null,
): readonly Column<NamedBirds>[] {
  return [
    { kind: 'text', title: observers?.a ?? t`By one`, text: ({ a }) => common(a) },
    { kind: 'text', title: observers?.b ?? t`By the other`, text: ({ b }) => common(b) },
    { kind: 'text', title: t`So they`, text: ({ kind }) => kindWords(kind) },
    { kind: 'number', title: t`Birds`, number: ({ number }) => number, write: birds },
  ];
}

function restsOnBirds(named: readonly NamedBirds[]): string {
  const { agreed, compatible, differently, only } = totalsByKind(named);
  const both = agreed + compatible + differently;
  const [whole, seen, alone] = [Math.round(both), wholeBirds(both), wholeBirds(only)];
  return plural(whole, {
    one: `${seen} bird that both saw, ${alone} counted by one only; a bird that three observers compared stands in each of their pairs.`,
    other: `${seen} birds that both saw, ${alone} counted by one only; a bird that three observers compared stands in each of their pairs.`,
  });
}
