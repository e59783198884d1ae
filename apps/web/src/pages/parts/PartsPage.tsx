import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import {
  type PartsAtHand,
  type PartsKind,
  partsQuestion,
  useChangeParts,
  type WrittenParts,
} from '../../api/reach.ts';
import { ActTrouble } from '../../parts/ActTrouble.tsx';
import { Button } from '../../parts/Button.tsx';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { BindingLimits } from './BindingLimits.tsx';
import { CostsOfKinds } from './CostsOfKinds.tsx';
import { KindCard } from './KindCard.tsx';
import { PartDialog } from './PartDialog.tsx';
import styles from './parts.module.css';

/** A thing that is being written: of which kind, and in place of which; `null`: one more. */
interface Open {
  kind: PartsKind;
  row: number | null;
}

/** What the shop can buy, what a change costs it, and which limits bind: what a search for a power goes by. */
export default function PartsPage() {
  const parts = useQuery(partsQuestion(useViewChoices()));
  return (
    <>
      <PageHead title="Parts list" />
      <p className={styles.lead}>
        What can be bought when somebody asks for a power, with the class of its cost: 0 nothing, 1 a small
        change, up to 5 an engine’s worth. It holds for the command line too. What a plan may not pass are the
        limits below; their thresholds stand in the <Link to="/rules">rules</Link>.
      </p>
      <Trouble of={parts.error} />
      {parts.isPending && <Waiting />}
      {parts.data !== undefined && <Parts at={parts.data} />}
    </>
  );
}

function Parts({ at: { parts, page, isOwn } }: { at: PartsAtHand }) {
  const [open, setOpen] = useState<Open | null>(null);
  const change = useChangeParts();
  const put = (changed: (at: WrittenParts) => WrittenParts | null) => change.mutate({ parts: changed });
  const of = open === null ? undefined : page.kinds.find(({ id }) => id === open.kind);
  return (
    <Column>
      <ActTrouble act={change} onDone={() => {}} onTheirs={() => change.reset()} />
      {page.kinds.map((kind) => (
        <KindCard
          key={kind.id}
          kind={kind}
          costClasses={page.costClasses}
          onWrite={(row) => setOpen({ kind: kind.id, row })}
          onRemove={(row) =>
            put((at) => ({ [kind.id]: (at[kind.id] ?? []).filter((_, place) => place !== row) }))
          }
        />
      ))}
      <CostsOfKinds
        costs={page.costs}
        costClasses={page.costClasses}
        onChange={(part, cost) => put(({ costs }) => ({ costs: { ...costs, [part]: cost } }))}
      />
      <BindingLimits
        binding={page.binding}
        isRefused={change.isError}
        onChange={(id, binds) => put(({ binding }) => ({ binding: { ...binding, [id]: binds } }))}
      />
      <div className={styles.reset}>
        <Button isDisabled={!isOwn || change.isPending} onPress={() => put(() => null)}>
          Back to what is usual
        </Button>
        <p className={styles.soft}>
          {isOwn ? 'The shop changed this list.' : 'This is what is usual; nothing of it was changed here.'}
        </p>
      </div>
      {open !== null && of !== undefined && (
        <PartDialog
          title={of.title}
          kind={open.kind}
          rows={parts[open.kind] ?? []}
          row={open.row}
          costClasses={page.costClasses}
          onClose={() => setOpen(null)}
        />
      )}
    </Column>
  );
}
