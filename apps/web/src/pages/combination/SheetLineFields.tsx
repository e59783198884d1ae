import { useId } from 'react';
import type { SheetChange, SheetRemark, SheetWords } from '../../api/edge.ts';
import { Button } from '../../parts/Button.tsx';
import styles from './sheet-editor.module.css';
import { fieldWords, type SheetLine, saysUnknown, UNKNOWN } from './sheet-lines.ts';
import { TableFields } from './TableFields.tsx';

/** One line of the sheet: what it is, its value as text, where it comes from, or that it is not known. */
export function SheetLineFields({
  section,
  line,
  words,
  remarks,
  change,
  onLine,
  onEnter,
  onRemove,
}: {
  section: string;
  line: SheetLine;
  words: SheetWords;
  remarks: SheetRemark[];
  change: SheetChange | undefined;
  onLine: (line: SheetLine) => void;
  onEnter: () => void;
  onRemove: () => void;
}) {
  const id = useId();
  const place = `${section}.${line.field}`;
  const known = fieldWords(words, section, line.field);
  const label = known?.label ?? line.field;
  const said = remarks.filter((one) => one.place === place || one.place?.startsWith(`${place}.`));
  const isRefused = said.some(({ level }) => level === 'refusal');
  const unknown = saysUnknown(line);
  const isTable = line.details !== null && known?.details != null;
  const described = { 'aria-describedby': `${id}-said`, 'aria-invalid': isRefused };

  return (
    <div className={change === undefined ? styles.line : styles.changedLine}>
      {isTable ? (
        <span className={styles.lineLabel}>{label}</span>
      ) : (
        <label className={styles.lineLabel} htmlFor={id}>
          {label}
        </label>
      )}
      {isTable ? (
        <span className={styles.tableTold}>{unknown ? 'not known' : 'points below'}</span>
      ) : (
        <input
          id={id}
          className={unknown ? styles.unknownControl : styles.control}
          data-place={place}
          autoComplete="off"
          placeholder={known === undefined ? '' : `such as ${known.example}`}
          value={line.text}
          {...described}
          onChange={(event) => onLine({ ...line, text: event.target.value })}
          onFocus={(event) => unknown && event.target.select()}
          onKeyDown={(event) => {
            if (event.key !== 'Enter') return;
            event.preventDefault();
            onEnter();
          }}
        />
      )}
      <select
        className={styles.control}
        aria-label={`Where it comes from: ${label}`}
        value={line.origin}
        onChange={(event) => onLine({ ...line, origin: event.target.value })}
      >
        {words.origins.map((origin) => (
          <option key={origin}>{origin}</option>
        ))}
      </select>
      <label className={styles.unknownChoice}>
        <input
          type="checkbox"
          aria-label={`Not known: ${label}`}
          checked={unknown}
          {...(isTable ? { 'data-place': place } : {})}
          onChange={(event) => onLine({ ...line, text: event.target.checked ? UNKNOWN : '' })}
        />
        <span aria-hidden="true">not known</span>
      </label>
      <Button look="quiet" small aria-label={`Take off: ${label}`} onPress={onRemove}>
        ✕
      </Button>
      {isTable && !unknown && <TableFields line={line} known={known} described={described} onLine={onLine} />}
      <div id={`${id}-said`} className={styles.said}>
        {change !== undefined && (
          <span className={styles.was}>Changed: was {change.before ?? 'not on the sheet'}</span>
        )}
        {said.map((one) => (
          <span key={one.text} className={one.level === 'note' ? styles.note : styles.fault}>
            {withoutPlace(one.text)}
          </span>
        ))}
      </div>
    </div>
  );
}

/** A remark begins with the place it is of; beside its own line that is said twice. */
function withoutPlace(text: string): string {
  const rest = text.replace(/^[A-Za-z]+\.[^:]+:\s*/, '');
  return rest.charAt(0).toUpperCase() + rest.slice(1);
}
