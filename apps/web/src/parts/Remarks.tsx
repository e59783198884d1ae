import type { ShownRemark } from '@pullbook/views';
import styles from './remarks.module.css';

const LEVEL_WORD = { note: 'Note', caution: 'Caution', refusal: 'Refused' } as const;

function placeOf({ line, column }: ShownRemark): string | null {
  if (line === undefined || line === null) return null;
  return column === undefined || column === null ? `line ${line}` : `line ${line}, column ${column}`;
}

/** What a reading or a computation had to say. `goTo` makes a place in a text a button. */
export function Remarks({ remarks, goTo }: { remarks: ShownRemark[]; goTo?: (line: number) => void }) {
  if (remarks.length === 0) return null;
  return (
    <ul className={styles.list}>
      {remarks.map((remark) => {
        const place = placeOf(remark);
        return (
          <li key={`${place} ${remark.text}`} className={styles.remark}>
            <span className={styles[remark.level]}>{LEVEL_WORD[remark.level]}</span>
            <span>
              {remark.text}{' '}
              {place !== null && (
                <span className={styles.place}>
                  {goTo === undefined ? (
                    `(${place})`
                  ) : (
                    <button type="button" onClick={() => goTo(remark.line!)}>
                      {place}
                    </button>
                  )}
                </span>
              )}
            </span>
          </li>
        );
      })}
    </ul>
  );
}
