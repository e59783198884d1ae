import type { ShownRemark } from '@pullbook/views';
import { useMutation, useQuery } from '@tanstack/react-query';
import { type FormEvent, useState } from 'react';
import { bookChanged } from '../../api/query-client.ts';
import { enginesQuestion, packagesQuestion } from '../../api/questions.ts';
import { sendJson } from '../../api/request.ts';
import { Button } from '../../parts/Button.tsx';
import { DialogActions } from '../../parts/Dialog.tsx';
import { Fields, SelectField, TextField } from '../../parts/Field.tsx';
import { PackagesFitted } from './PackagesFitted.tsx';
import { SheetEditor } from './SheetEditor.tsx';
import { draftText, type SheetDraft } from './sheet-draft.ts';

const NEW_ENGINE = 'new';

/** A new combination from a sheet: on its own page, or on the spot in a dialog. */
export function CombinationForm({
  sheetText,
  engineName,
  madeFrom,
  onMade,
  onCancel,
}: {
  sheetText: string;
  /** Of the combination it is made from, or a proposal. */
  engineName: string;
  madeFrom: { id: string; name: string; packages: string[] } | null;
  onMade: (made: { id: string; name: string; remarks: ShownRemark[] }) => void;
  onCancel?: () => void;
}) {
  const engines = useQuery(enginesQuestion());
  const known = engines.data ?? [];
  const [chosenEngine, setChosenEngine] = useState<string | null>(null);
  const engine =
    chosenEngine ??
    known.find((one) => one.name === engineName)?.id ??
    (engineName === '' ? known[0]?.id : undefined) ??
    NEW_ENGINE;
  const [newEngine, setNewEngine] = useState(engineName);
  const [draft, setDraft] = useState<SheetDraft>({ shown: 'text', text: sheetText });
  const [chosenPackages, setChosenPackages] = useState<string[] | null>(null);
  const packages = useQuery(packagesQuestion());
  const fitted =
    chosenPackages ??
    (packages.data ?? []).filter((one) => madeFrom?.packages.includes(one.name)).map((one) => one.id);

  const make = useMutation({
    mutationFn: () =>
      sendJson<{ id: string; name: string; remarks?: ShownRemark[] }>('POST', '/combinations', {
        sheetText: draftText(draft),
        ...(engine === NEW_ENGINE ? { engineName: newEngine.trim() } : { engineId: engine }),
        ...(madeFrom === null ? {} : { madeFromId: madeFrom.id }),
        ...(chosenPackages === null ? {} : { packageIds: chosenPackages }),
      }),
    onSuccess: async ({ id, name, remarks }) => {
      await bookChanged();
      onMade({ id, name, remarks: remarks ?? [] });
    },
  });

  function submit(event: FormEvent) {
    event.preventDefault();
    event.stopPropagation();
    make.mutate();
  }

  return (
    <form onSubmit={submit} style={{ display: 'contents' }}>
      {madeFrom === null && (
        <Fields wide>
          <SelectField
            label="Engine"
            value={engine}
            onChange={(event) => setChosenEngine(event.target.value)}
            options={[
              ...known.map(({ id, name, buildRevision }) => ({
                value: id,
                text: `${name}, build ${buildRevision}`,
              })),
              { value: NEW_ENGINE, text: 'Another engine …' },
            ]}
          />
          {engine === NEW_ENGINE && (
            <TextField
              label="Name of the engine"
              help="One physical engine, as the shop calls it."
              required
              value={newEngine}
              onChange={(event) => setNewEngine(event.target.value)}
            />
          )}
        </Fields>
      )}
      <PackagesFitted fitted={fitted} onFitted={setChosenPackages} />
      <SheetEditor draft={draft} onDraft={setDraft} madeFromId={madeFrom?.id} trouble={make.error} />
      <DialogActions>
        <Button look="main" type="submit" isDisabled={make.isPending}>
          Keep this combination
        </Button>
        {onCancel !== undefined && <Button onPress={onCancel}>Cancel</Button>}
      </DialogActions>
    </form>
  );
}
