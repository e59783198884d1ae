import type { SettingsReport } from '@pullbook/workshop';
import { useMutation, useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { queryClient } from '../../api/query-client.ts';
import { sendJson } from '../../api/request.ts';
import { backupQuestion, useKeepSettings } from '../../api/shop.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { TextField } from '../../parts/Field.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { momentHere } from '../../view/moment-here.ts';
import { Kept } from './Kept.tsx';
import styles from './shop.module.css';

/** When the book was last copied away, and where to. */
export function Backup({ settings }: { settings: SettingsReport }) {
  const state = useQuery(backupQuestion());
  const keep = useKeepSettings();
  const [folder, setFolder] = useState(settings.backupFolder ?? '');
  const make = useMutation({
    mutationFn: () => sendJson<unknown>('POST', '/backup', {}),
    onSuccess: () => queryClient.invalidateQueries({ queryKey: backupQuestion().queryKey }),
  });
  const last = state.data?.last ?? null;

  function keepFolder(event: FormEvent) {
    event.preventDefault();
    keep.mutate({ backupFolder: folder.trim() || null, stamp: settings.stamp });
  }

  return (
    <Card title="Backup">
      <div className={styles.form}>
        <p>
          {last === null
            ? 'No backup yet.'
            : `Last ${momentHere(last.madeAt)}, in ${last.folder}: ${last.pulls === 1 ? '1 pull' : `${last.pulls} pulls`}.`}
        </p>
        {state.data?.trouble != null && <p role="alert">{state.data.trouble}</p>}
        <form className={styles.beside} onSubmit={keepFolder}>
          <TextField
            label="Folder"
            help="A whole path, best on another disk. With it set, a backup is made each day while Pullbook runs."
            value={folder}
            onChange={(event) => setFolder(event.target.value)}
          />
          <Button type="submit">Keep the folder</Button>
        </form>
        <Kept act={keep} onTheirs={() => setFolder(settings.backupFolder ?? '')} />
        <div>
          <Button onPress={() => make.mutate()} isDisabled={make.isPending || settings.backupFolder === null}>
            {make.isPending ? 'Backing up …' : 'Back up now'}
          </Button>
        </div>
        <Trouble of={state.error ?? make.error} />
        <output className={styles.kept}>{make.isSuccess ? 'Backed up.' : ''}</output>
      </div>
    </Card>
  );
}
