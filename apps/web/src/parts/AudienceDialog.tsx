import type { ShownAudience } from '@pullbook/views';
import { type FormEvent, useState } from 'react';
import { useSetAudience } from '../api/shop.ts';
import { useLooked } from '../api/use-looked.ts';
import { Dialog } from './Dialog.tsx';
import { Choice, TextField } from './Field.tsx';
import { KeepEnd } from './KeepEnd.tsx';

const WHO = [
  { value: 'everyone', text: 'Everyone', help: 'It may be published.' },
  { value: 'customer', text: 'The customer', help: 'For whose engine it is, and nobody else.' },
  { value: 'shop', text: 'The shop alone', help: 'It never leaves it.' },
] as const;

export function AudienceDialog({
  kind,
  id,
  audience,
  onClose,
}: {
  kind: 'pull' | 'trial';
  id: string;
  audience: ShownAudience;
  onClose: () => void;
}) {
  const [who, setWho] = useState<ShownAudience['who']>(audience.who);
  const [notBefore, setNotBefore] = useState(audience.notBefore ?? '');
  const set = useSetAudience(id);
  const looked = useLooked(kind, id);

  function submit(event: FormEvent) {
    event.preventDefault();
    set.mutate(
      { who, notBefore: notBefore === '' ? null : notBefore, stamp: looked },
      { onSuccess: onClose },
    );
  }

  return (
    <Dialog title="Who may see it" open onClose={onClose}>
      <form onSubmit={submit} style={{ display: 'contents' }}>
        <fieldset>
          <legend className="unseen">Who may see it outside this book</legend>
          {WHO.map(({ value, text, help }) => (
            <Choice
              key={value}
              kind="radio"
              name="who"
              checked={who === value}
              onChange={() => setWho(value)}
              help={help}
            >
              {text}
            </Choice>
          ))}
        </fieldset>
        <TextField
          label="Not before"
          type="date"
          help="An embargo; blank: none."
          value={notBefore}
          onChange={(event) => setNotBefore(event.target.value)}
        />
        <KeepEnd act={set} onClose={onClose} />
      </form>
    </Dialog>
  );
}
