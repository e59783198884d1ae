import type { UseMutationResult } from '@tanstack/react-query';
import type { ImportReport } from '../../api/edge.ts';
import { Button } from '../../parts/Button.tsx';
import { Findings } from '../../parts/Findings.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './add-pulls.module.css';

/** What the rules say of the file as it would go in, when a person asks before adding it. */
export function Checked({ check }: { check: UseMutationResult<ImportReport, Error, void> }) {
  const { data } = check;
  const isSilent = data !== undefined && data.findings.length === 0 && data.remarks.length === 0;
  return (
    <section className={styles.file} aria-label="Check before adding">
      <div className={styles.acts}>
        <Button isDisabled={check.isPending} onPress={() => check.mutate()}>
          Check before adding
        </Button>
        <output>
          {check.isPending && 'Looking …'}
          {isSilent && 'Nothing stands out.'}
        </output>
      </div>
      {data !== undefined && (
        <>
          <Findings findings={data.findings} />
          <Remarks remarks={data.remarks} />
        </>
      )}
      <Trouble of={check.error} />
    </section>
  );
}
