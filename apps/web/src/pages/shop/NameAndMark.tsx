import type { SettingsReport } from '@pullbook/workshop';
import { type ChangeEvent, type FormEvent, useId, useState } from 'react';
import { useKeepSettings } from '../../api/shop.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { TextField } from '../../parts/Field.tsx';
import { base64Of } from './base64-of.ts';
import { Kept } from './Kept.tsx';
import styles from './shop.module.css';

/** Whose pictures and reports these are. Nothing is shipped: without a name and a mark they bear none. */
export function NameAndMark({ settings }: { settings: SettingsReport }) {
  const keep = useKeepSettings();
  const [name, setName] = useState(settings.shopName);
  const [contact, setContact] = useState(settings.shopContact);
  const markId = useId();

  function keepWords(event: FormEvent) {
    event.preventDefault();
    keep.mutate({ shopName: name, shopContact: contact, stamp: settings.stamp });
  }

  async function keepMark(event: ChangeEvent<HTMLInputElement>) {
    const [file] = event.target.files ?? [];
    event.target.value = '';
    if (file !== undefined) keep.mutate({ mark: { base64: await base64Of(file) } });
  }

  return (
    <Card title="Own name and mark">
      <div className={styles.form}>
        <p className={styles.soft}>
          Name and mark stand under every still, at its right end, and over every report.
        </p>
        <form className={styles.beside} onSubmit={keepWords}>
          <TextField label="Name" value={name} onChange={(event) => setName(event.target.value)} />
          <TextField
            label="Where you are found"
            help="Address, telephone: one line over every report."
            value={contact}
            onChange={(event) => setContact(event.target.value)}
          />
          <Button type="submit">Keep them</Button>
        </form>
        <div className={styles.markField}>
          <label className={styles.legend} htmlFor={markId}>
            Mark: PNG or SVG, up to 300 kB
          </label>
          <input
            id={markId}
            className={styles.file}
            type="file"
            accept="image/png,image/svg+xml"
            onChange={(event) => void keepMark(event)}
          />
          {settings.mark !== null && (
            <Button look="quiet" onPress={() => keep.mutate({ mark: null })}>
              Take the mark away
            </Button>
          )}
        </div>
        <Kept
          act={keep}
          onTheirs={() => {
            setName(settings.shopName);
            setContact(settings.shopContact);
          }}
        />
      </div>
    </Card>
  );
}
