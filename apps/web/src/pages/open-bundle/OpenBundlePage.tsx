import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';
import { lookAtBundle, useOpenBundle } from '../../api/bundles.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { bringBundle, useBroughtBundle } from './brought-bundle.ts';
import styles from './open-bundle.module.css';

/** A trial that another Pullbook gave away: what is in it first, then it becomes one of the book. */
export default function OpenBundlePage() {
  const file = useBroughtBundle();
  const chooser = useRef<HTMLInputElement>(null);
  const navigate = useNavigate();
  const open = useOpenBundle();
  const look = useQuery({
    queryKey: ['bundle', file?.name, file?.size, file?.lastModified],
    queryFn: () => lookAtBundle(file!),
    enabled: file !== null,
    retry: false,
  });
  const { reset } = open;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another file, another question
  useEffect(() => reset(), [file]);

  return (
    <Column narrow>
      <PageHead title="Open a bundle" />
      <p className={styles.soft}>
        A bundle is a trial with its combinations, pulls and original files in one zip, from the page that
        publishes or from the command line of another Pullbook. What the book has already stays as it is here.
      </p>
      <div>
        <input
          ref={chooser}
          type="file"
          accept=".zip,application/zip"
          aria-label="Bundle"
          hidden
          onChange={(event) => {
            bringBundle(event.target.files?.[0] ?? null);
            event.target.value = '';
          }}
        />
        <Button look={file === null ? 'main' : 'plain'} onPress={() => chooser.current?.click()}>
          {file === null ? 'Choose a bundle …' : 'Choose another …'}
        </Button>
      </div>
      {file !== null && (
        <Card title={file.name}>
          <div className={styles.look}>
            {look.isPending && <Waiting />}
            <Trouble of={look.error} />
            {look.data !== undefined && (
              <>
                {look.data.trials.map(({ id, question, isKnown }) => (
                  <div key={id}>
                    <p className={styles.question}>{question}</p>
                    {isKnown && (
                      <p>The book has this trial already: only what the bundle has besides is taken in.</p>
                    )}
                  </div>
                ))}
                <What name="Combinations" of={look.data.combinations} />
                <What name="Pulls" of={look.data.pulls} />
                {look.data.invented && <p>Its data are invented.</p>}
                <Remarks remarks={look.data.remarks} />
                <Trouble of={open.error} />
                <div className={styles.acts}>
                  <Button
                    look="main"
                    isDisabled={open.isPending}
                    onPress={() =>
                      open.mutate(file, {
                        onSuccess: ({ trialId }) => {
                          bringBundle(null);
                          void navigate({ to: '/trials/$id', params: { id: trialId } });
                        },
                      })
                    }
                  >
                    {open.isPending ? 'Opening it …' : 'Open it as a trial'}
                  </Button>
                  <Button onPress={() => bringBundle(null)}>Put it away</Button>
                </div>
              </>
            )}
          </div>
        </Card>
      )}
      <p className={styles.soft}>
        Logged files of pulls, zipped or not, are something else: unpack them and{' '}
        <Link to="/add">add them as pulls</Link>.
      </p>
    </Column>
  );
}

function What({ name, of }: { name: string; of: { name: string; isKnown: boolean }[] }) {
  if (of.length === 0) return null;
  const known = of.filter(({ isKnown }) => isKnown).length;
  return (
    <div>
      <h3>
        {name}: {of.length}
        {known > 0 && `, of which ${known} ${known === 1 ? 'is' : 'are'} in the book already`}
      </h3>
      <p className={styles.soft}>{of.map((one) => one.name).join(' · ')}</p>
    </div>
  );
}
