import { plural, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useState, type ReactNode } from 'react';
import { useMutation } from 'urql';
import { useLocation } from 'wouter';
import { readTrouble, type Trouble } from '../graphql/trouble.js';
import { Field } from '../ui/field.js';
import { Notice, TroubleNotice } from '../ui/notice.js';
import { Page } from '../ui/page.js';
import { pathOf } from '../ui/path.js';
import { listed } from '../ui/words.js';
import { ImportCount } from './documents.js';
import { FaultTable } from './fault-table.js';

const needed = ['count.json', 'places.geojson', 'tallies.csv'] as const;

/** Takes in a whole count folder; refused as a whole, with everything that is wrong, if anything is. */
export function ImportPage(): ReactNode {
  const [files, setFiles] = useState<readonly File[]>([]);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [{ fetching }, importCount] = useMutation(ImportCount);
  const [, navigate] = useLocation();
  const missing = needed.filter((name) => !files.some((file) => file.name === name));
  const wanted = listed(needed);
  const chosen = listed(files.map(({ name }) => name));
  const left = listed(missing);

  async function submit(): Promise<void> {
    setTrouble(null);
    const texts = await Promise.all(
      files.map(async (file) => ({ name: file.name, text: await file.text() })),
    );
    const answer = await importCount({ files: texts });
    if (answer.error) setTrouble(readTrouble(answer.error));
    else if (answer.data) navigate(pathOf('counts', answer.data.importCount.id));
  }

  return (
    <Page
      title={t`Take in a count folder`}
      width="reading"
      intro={t`The files of one count, as text. Either all of it is taken in or nothing is.`}
    >
      <div className="stack">
        <form
          className="stack"
          onSubmit={(event) => {
            event.preventDefault();
            void submit();
          }}
        >
          <Field label={t`Files of the folder`} hint={t`${wanted}; choose them together`}>
            {(ties) => (
              <input
                {...ties}
                type="file"
                multiple
                onChange={(event) => {
                  setFiles([...(event.target.files ?? [])]);
                  setTrouble(null);
                }}
              />
            )}
          </Field>
          {files.length === 0 ? null : (
            <p role="status">
              {plural(files.length, {
                one: `# file chosen: ${chosen}.`,
                other: `# files chosen: ${chosen}.`,
              })}{' '}
              {missing.length === 0 ? null : <Trans>Still to choose: {left}.</Trans>}
            </p>
          )}
          <div>
            <button
              type="submit"
              className="button"
              data-kind="main"
              disabled={fetching || files.length === 0}
            >
              {fetching ? t`Reading …` : t`Take it in`}
            </button>
          </div>
        </form>
        {trouble === null ? null : trouble.kind === 'refused' && trouble.faults.length > 0 ? (
          <div className="stack">
            <Notice kind="refused" title={trouble.message}>
              <p>
                <Trans>Mend these in the files, then choose them again.</Trans>
              </p>
            </Notice>
            <FaultTable faults={trouble.faults} />
          </div>
        ) : (
          <TroubleNotice trouble={trouble} />
        )}
      </div>
    </Page>
  );
}
