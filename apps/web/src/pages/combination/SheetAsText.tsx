import { useRef } from 'react';
import type { SheetRemark } from '../../api/edge.ts';
import { TextArea } from '../../parts/Field.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import styles from './combination.module.css';

/** A sheet as text, with what is said of it. A place in a message leads to its line. */
export function SheetAsText({
  text,
  onText,
  remarks,
  trouble,
}: {
  text: string;
  onText: (text: string) => void;
  remarks: SheetRemark[];
  trouble: Error | null;
}) {
  const field = useRef<HTMLTextAreaElement>(null);

  function goTo(line: number) {
    const lines = text.split('\n');
    const start = lines.slice(0, line - 1).join('\n').length + (line > 1 ? 1 : 0);
    field.current?.focus();
    field.current?.setSelectionRange(start, start + (lines[line - 1]?.length ?? 0));
  }

  return (
    <>
      <div className={styles.sheet}>
        <TextArea
          ref={field}
          label="The sheet"
          help={
            <>
              One line a value, with its unit: <code>bore: 96 mm</code>. Say where a value comes from where it
              matters: <code>bore: &#123; value: 96 mm, origin: measured &#125;</code>. What is not known is{' '}
              <code>unknown</code>.
            </>
          }
          rows={Math.min(32, Math.max(14, text.split('\n').length + 1))}
          spellCheck={false}
          required
          value={text}
          onChange={(event) => onText(event.target.value)}
        />
      </div>
      {trouble === null ? <Remarks remarks={remarks} goTo={goTo} /> : <Trouble of={trouble} goTo={goTo} />}
    </>
  );
}
