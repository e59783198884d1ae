import { useMutation, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { bookChanged } from '../../api/query-client.ts';
import { packagesQuestion } from '../../api/questions.ts';
import { sendJson } from '../../api/request.ts';
import { Button } from '../../parts/Button.tsx';
import { Choice, Fields, TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './combination.module.css';

/** Parts that are one change by declaration: which are fitted, and a new one declared on the spot. */
export function PackagesFitted({
  fitted,
  onFitted,
}: {
  fitted: string[];
  onFitted: (ids: string[]) => void;
}) {
  const packages = useQuery(packagesQuestion());
  const [name, setName] = useState('');
  const [covers, setCovers] = useState('');
  const declare = useMutation({
    mutationFn: () =>
      sendJson<{ id: string }>('POST', '/packages', {
        name: name.trim(),
        covers: covers.split(/[\s,]+/).filter((part) => part !== ''),
      }),
    onSuccess: async ({ id }) => {
      // Ticked before it is listed: it never stands there unticked.
      onFitted([...fitted, id]);
      await bookChanged();
      setName('');
      setCovers('');
    },
  });

  return (
    <details className={styles.packages}>
      <summary>Packages fitted{fitted.length > 0 && `: ${fitted.length}`}</summary>
      <div className={styles.packageParts}>
        <p>Parts that are one change by declaration: a supercharger with its drive, cooler and injectors.</p>
        {(packages.data ?? []).map((one) => (
          <Choice
            key={one.id}
            kind="checkbox"
            checked={fitted.includes(one.id)}
            onChange={(event) =>
              onFitted(event.target.checked ? [...fitted, one.id] : fitted.filter((id) => id !== one.id))
            }
            help={one.covers.join(', ')}
          >
            {one.name}
          </Choice>
        ))}
        <Fields wide>
          <TextField label="A new package" value={name} onChange={(event) => setName(event.target.value)} />
          <TextField
            label="Its parts"
            help="Sections of the sheet, or one line of a section: supercharger, drive, fuelSystem.injectorFlow"
            value={covers}
            onChange={(event) => setCovers(event.target.value)}
          />
        </Fields>
        <Trouble of={declare.error} />
        <Button isDisabled={declare.isPending || name.trim() === ''} onPress={() => declare.mutate()}>
          Declare it
        </Button>
      </div>
    </details>
  );
}
