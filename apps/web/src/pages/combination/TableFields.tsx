import type { FieldWords } from '../../api/edge.ts';
import { Fields, TextArea, TextField } from '../../parts/Field.tsx';
import styles from './sheet-editor.module.css';
import type { SheetLine } from './sheet-lines.ts';

/** A table of the sheet: what its points were taken with, and the points to type or paste. */
export function TableFields({
  line,
  known,
  described,
  onLine,
}: {
  line: SheetLine;
  known: FieldWords;
  described: { 'aria-describedby': string; 'aria-invalid': boolean };
  onLine: (line: SheetLine) => void;
}) {
  const rows = line.text.split('\n').length;
  return (
    <fieldset className={styles.table}>
      <legend className="unseen">{known.label}</legend>
      <Fields>
        {(known.details ?? []).map((detail) => (
          <TextField
            key={detail.field}
            label={detail.needed ? `${detail.label} (needed)` : detail.label}
            placeholder={`such as ${detail.example}`}
            value={line.details?.[detail.field] ?? ''}
            onChange={(event) =>
              onLine({ ...line, details: { ...line.details, [detail.field]: event.target.value } })
            }
            onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}
          />
        ))}
      </Fields>
      <TextArea
        label="Points"
        help="A heading with units, then one point a line, rising. Paste from a file or a spreadsheet."
        placeholder={known.example}
        rows={Math.min(16, Math.max(5, rows + 1))}
        spellCheck={false}
        value={line.text}
        {...described}
        onChange={(event) => onLine({ ...line, text: event.target.value })}
      />
    </fieldset>
  );
}
