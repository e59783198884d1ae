import type { CombinationPage } from '@pullbook/views';
import { useMutation, useQuery } from '@tanstack/react-query';
import { useNavigate, useParams } from '@tanstack/react-router';
import { type FormEvent, useState } from 'react';
import { bookChanged } from '../../api/query-client.ts';
import { combinationQuestion } from '../../api/questions.ts';
import { ApiTrouble, sendJson } from '../../api/request.ts';
import { useLooked } from '../../api/use-looked.ts';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { Panel } from '../../parts/Card.tsx';
import { DialogActions } from '../../parts/Dialog.tsx';
import { TextField } from '../../parts/Field.tsx';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './combination.module.css';
import { SheetEditor } from './SheetEditor.tsx';
import { draftText, type SheetDraft } from './sheet-draft.ts';

/** Mends what was entered wrong of the same hardware. The log keeps both sides. */
export default function AmendCombinationPage() {
  const { id } = useParams({ from: '/combinations/$id/amend' });
  const combination = useQuery(combinationQuestion(id, useViewChoices()));
  if (combination.data === undefined)
    return combination.isPending ? <Waiting /> : <Trouble of={combination.error} />;
  return <Amendment key={id} combination={combination.data} />;
}

function Amendment({ combination }: { combination: CombinationPage }) {
  const navigate = useNavigate();
  const [draft, setDraft] = useState<SheetDraft>({ shown: 'text', text: combination.sheetText });
  const [reason, setReason] = useState('');
  const amend = useMutation({
    mutationFn: (change: { sheetText: string; reason: string; stamp?: string | undefined }) =>
      sendJson('PATCH', `/combinations/${encodeURIComponent(combination.id)}`, change),
    onSuccess: bookChanged,
  });
  const looked = useLooked('combination', combination.id);
  const toPage = () => navigate({ to: '/combinations/$id', params: { id: combination.id } });
  const meanwhile = amend.error instanceof ApiTrouble && amend.error.meanwhile !== null;
  function submit(event: FormEvent) {
    event.preventDefault();
    amend.mutate({ sheetText: draftText(draft), reason, stamp: looked }, { onSuccess: toPage });
  }
  return (
    <Column narrow>
      <PageHead title={`Amend “${combination.name}”`} />
      <Panel>
        <form className={styles.form} onSubmit={submit}>
          <p>
            For better knowledge of the same hardware. Where the hardware itself was changed, make a new
            combination instead: its pulls are others.
          </p>
          <TextField
            label="Reason"
            help="“bore measured again”. It stands in the log."
            required
            value={reason}
            onChange={(event) => setReason(event.target.value)}
          />
          <SheetEditor
            draft={draft}
            onDraft={setDraft}
            madeFromId={combination.id}
            mends
            trouble={meanwhile ? null : amend.error}
          />
          {meanwhile && <ActTrouble act={amend} onDone={toPage} onTheirs={toPage} />}
          <DialogActions>
            <Button look="main" type="submit" isDisabled={amend.isPending}>
              Keep the amendment
            </Button>
            <ButtonLink to="/combinations/$id" params={{ id: combination.id }}>
              Cancel
            </ButtonLink>
          </DialogActions>
        </form>
      </Panel>
    </Column>
  );
}
