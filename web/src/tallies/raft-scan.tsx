import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { readTaxon } from '../ui/taxon.js';
import { countedBirds } from '../ui/counted.js';
import type { DraftRaft, DraftSample } from './raft.js';
import { numberIn, withBirds } from './raft-draft.js';
import { TaxonPicker } from './taxon-picker.js';
import { widerNames } from './wider-names.js';

/** Scan samples by tapping: one button an identification, one sample at a time. */
export function RaftScan(props: {
  readonly raft: DraftRaft;
  /** Taxa of the tally, latest first: what a raft is likely to be of. */
  readonly recent: readonly string[];
  readonly onChange: (raft: DraftRaft) => void;
}): ReactNode {
  const { raft, onChange } = props;
  const [at, setAt] = useState(raft.samples.length - 1);
  const sampleAt = Math.min(at, raft.samples.length - 1);
  const sample = raft.samples[sampleAt] ?? [];
  const size = sizeOf(sample);
  const [isAdding, setAdding] = useState(false);
  const coarser = coarserThan(raft.taxa);

  function scanFor(taxon: string): void {
    setAdding(false);
    if (!raft.taxa.includes(taxon)) onChange({ ...raft, taxa: [...raft.taxa, taxon] });
  }

  const place = sampleAt + 1;
  const birds = countedBirds(size);
  return (
    <section className="stack" aria-labelledby={`scan-${raft.id}`}>
      <div>
        <h3 id={`scan-${raft.id}`}>
          <Trans>
            Scan sample {place}: {birds}
          </Trans>
        </h3>
        <p className="hint">
          <Trans>
            Pick a part of the raft, and tap each bird of it as what you can name it: a species, or
            a pair or group if you cannot tell. Thirty to fifty birds make a sample; take the next
            from another part.
          </Trans>
        </p>
      </div>
      {raft.samples.length < 2 ? null : (
        <div className="choice-row" role="group" aria-label={t`Samples of this raft`}>
          {raft.samples.map((each, index) => (
            <button
              key={index}
              type="button"
              className="button"
              aria-pressed={index === sampleAt}
              onClick={() => setAt(index)}
            >
              {index + 1}: {countedBirds(sizeOf(each))}
            </button>
          ))}
        </div>
      )}
      {raft.taxa.length === 0 ? null : (
        <ul className="plain-list scan-taxa">
          {raft.taxa.map((taxon) => {
            const { common } = readTaxon(taxon);
            const number = numberIn(sample, taxon);
            return (
              <li key={taxon}>
                <button
                  type="button"
                  className="scan-bird"
                  onClick={() => onChange(withBirds(raft, sampleAt, taxon, 1))}
                >
                  <span>{common}</span> <span className="number">{number}</span>
                  <span className="for-readers">
                    {' '}
                    <Trans>in sample {place}. Add one</Trans>
                  </span>
                </button>
                <button
                  type="button"
                  className="button"
                  disabled={number === 0}
                  onClick={() => onChange(withBirds(raft, sampleAt, taxon, -1))}
                >
                  −1
                  <span className="for-readers">
                    {' '}
                    <Trans>{common}, take one back</Trans>
                  </span>
                </button>
              </li>
            );
          })}
        </ul>
      )}
      {coarser.length === 0 ? null : (
        <div
          className="field"
          role="group"
          aria-label={t`For birds that you cannot tell, scan for`}
        >
          <span className="label">
            <Trans>For birds that you cannot tell</Trans>
          </span>
          <div className="choice-row">
            {coarser.map(({ name, common }) => (
              <button key={name} type="button" className="button" onClick={() => scanFor(name)}>
                <Trans>Add {common}</Trans>
              </button>
            ))}
          </div>
        </div>
      )}
      {raft.taxa.length === 0 || isAdding ? (
        <TaxonPicker
          label={t`Scan for`}
          recent={props.recent.filter((taxon) => !raft.taxa.includes(taxon))}
          onPick={({ name }) => scanFor(name)}
        />
      ) : (
        <div className="row">
          <button
            type="button"
            className="button"
            data-kind="main"
            disabled={size === 0}
            onClick={() => {
              // An empty one that waits at the end is gone on with, so that there is never more than one.
              const waits = raft.samples.findIndex((each) => each.length === 0);
              if (waits >= 0) setAt(waits);
              else {
                setAt(raft.samples.length);
                onChange({ ...raft, samples: [...raft.samples, []] });
              }
            }}
          >
            <Trans>Next sample</Trans>
          </button>
          <button type="button" className="button" onClick={() => setAdding(true)}>
            <Trans>Scan for another taxon</Trans>
          </button>
        </div>
      )}
    </section>
  );
}

function sizeOf(sample: DraftSample): number {
  return sample.reduce((sum, { number }) => sum + number, 0);
}

/** Pairs and groups that hold what is scanned for and are not scanned for yet, narrow before wide. */
function coarserThan(taxa: readonly string[]): readonly { name: string; common: string }[] {
  const known = new Set(taxa.map((taxon) => readTaxon(taxon).name));
  const offered = new Map<string, { name: string; common: string; size: number }>();
  for (const taxon of taxa) {
    const parsed = parseTaxon(taxon);
    if (!parsed.ok) continue;
    for (const { name, common, candidates } of widerNames(parsed.candidates).slice(0, 2)) {
      if (!known.has(name)) offered.set(name, { name, common, size: candidates.length });
    }
  }
  return [...offered.values()].sort((one, other) => one.size - other.size).slice(0, 4);
}
