import { useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { sheetLookQuestion, sheetWordsQuestion } from '../../api/questions.ts';
import { ApiTrouble } from '../../api/request.ts';
import { ChangeLines } from '../../parts/ChangeLines.tsx';
import { Choice } from '../../parts/Field.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { SheetAsText } from './SheetAsText.tsx';
import { SheetByLines } from './SheetByLines.tsx';
import { draftText, type SheetDraft } from './sheet-draft.ts';
import styles from './sheet-editor.module.css';
import { linesFromPlain, type SheetLines } from './sheet-lines.ts';
import { useSettled } from './use-settled.ts';

/**
 * A sheet to edit, line by line or as text; both are the same sheet. What cannot be read is said at its line, and of a sheet
 * made from another what it changes, before anything is kept.
 */
export function SheetEditor({
  draft,
  onDraft,
  madeFromId,
  mends = false,
  trouble,
}: {
  draft: SheetDraft;
  onDraft: (draft: SheetDraft) => void;
  madeFromId?: string | undefined;
  /** It is the same hardware, better known. */
  mends?: boolean;
  trouble: Error | null;
}) {
  const words = useQuery(sheetWordsQuestion());
  const text = draftText(draft);
  const settled = useSettled(text);
  const look = useQuery(sheetLookQuestion(settled, madeFromId));
  const [first, setFirst] = useState<SheetLines | null>(null);
  const [shows, setShows] = useState<'lines' | 'text'>('lines');

  // The other way of showing it comes with the server's reading of exactly what stands here, so that nothing typed is lost.
  const seen = settled === text && !look.isPlaceholderData ? look.data : undefined;
  useEffect(() => {
    if (shows === 'lines' && draft.shown === 'text' && words.data && seen?.plain) {
      const lines = linesFromPlain(seen.plain, words.data);
      if (first === null && madeFromId !== undefined && !mends) setFirst(lines);
      onDraft({ shown: 'lines', lines });
    }
    if (shows === 'text' && draft.shown === 'lines' && seen?.sheetText != null)
      onDraft({ shown: 'text', text: seen.sheetText });
  }, [shows, draft.shown, words.data, seen, first, madeFromId, mends, onDraft]);

  if (words.data === undefined || look.data === undefined)
    return words.isPending || look.isPending ? <Waiting /> : <Trouble of={words.error ?? look.error} />;
  const { remarks, changes, plain } = look.data;
  const general = remarks.filter(({ place }) => draft.shown === 'text' || place === null);
  return (
    <div className={styles.editor}>
      <fieldset className={styles.shown}>
        <legend className="unseen">The sheet is shown</legend>
        <Choice
          kind="radio"
          name="sheet-shown"
          checked={shows === 'lines'}
          onChange={() => setShows('lines')}
        >
          Line by line
        </Choice>
        <Choice kind="radio" name="sheet-shown" checked={shows === 'text'} onChange={() => setShows('text')}>
          As text
        </Choice>
      </fieldset>
      {shows === 'lines' && draft.shown === 'text' && plain === null && (
        <p role="status">It can be shown line by line as soon as the text can be read.</p>
      )}
      {draft.shown === 'lines' ? (
        <SheetByLines
          lines={draft.lines}
          first={first}
          words={words.data}
          remarks={remarks}
          changes={changes ?? []}
          onLines={(lines) => onDraft({ shown: 'lines', lines })}
        />
      ) : (
        <SheetAsText
          text={draft.text}
          onText={(changed) => onDraft({ shown: 'text', text: changed })}
          remarks={general}
          trouble={trouble}
        />
      )}
      {draft.shown === 'lines' && <Remarks remarks={general} />}
      {madeFromId !== undefined && (
        <section className={styles.changes} aria-label="What this changes" aria-live="polite">
          <h2>What this changes</h2>
          {changes === null ? (
            <p>Listed as soon as every line can be read.</p>
          ) : changes.length === 0 ? (
            <p>Nothing yet. Change what was changed on the engine.</p>
          ) : (
            <ChangeLines
              lines={changes.map(({ label, before, after, packageName }) => ({
                label,
                before: before ?? 'not on the sheet',
                after: after ?? 'not on the sheet',
                packageName,
              }))}
            />
          )}
        </section>
      )}
      {draft.shown === 'lines' && <Trouble of={withoutLines(trouble)} />}
    </div>
  );
}

/** Shown line by line a sheet has no lines of text to be led to; what is wrong stands at its own line. */
function withoutLines(trouble: Error | null): Error | null {
  if (!(trouble instanceof ApiTrouble)) return trouble;
  const remarks = trouble.remarks.map(({ level, text }) => ({ level, text }));
  return new ApiTrouble(trouble.code, trouble.message, remarks);
}
